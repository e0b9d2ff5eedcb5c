import { type Hover, MarkupKind, type Position } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import type { Core } from '../../shared/workspace/facade.ts';
import type { ClientFeatures } from '../client-features.ts';

export function hover(
  core: Core,
  client: ClientFeatures,
  file: FileId,
  position: Position,
): Hover | null {
  const found = core.hover(file, position);
  if (!found) return null;
  const contents = client.markdown
    ? { kind: MarkupKind.Markdown, value: found.markdown }
    : { kind: MarkupKind.PlainText, value: plainText(found.markdown) };
  return { contents, range: found.range };
}

/** The words of our own Markdown without its marks, for clients that show no markup. */
export const plainText = (markdown: string): string =>
  markdown
    .replace(/\\([\\`*_{}[\]()#+!|~<>.=-])|[*`]|^#+ /gm, (_, escaped?: string) => escaped ?? '')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/\u200b/g, '')
    .replace(/&amp;/g, '&');
