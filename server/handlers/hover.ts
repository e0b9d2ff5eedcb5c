import { type Hover, MarkupKind, type Position } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
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
    .split('\n')
    .filter((line) => !/^\|[:|-]+\|$/.test(line))
    .map((line) => withoutMarks(tableRow(line) ?? line))
    .join('\n');

/** `| label | value |` as "label: value"; null for anything else. An escaped bar is a character. */
function tableRow(line: string): string | null {
  const cells = /^\| (.*) \|$/.exec(line)?.[1]?.split(/(?<!\\) \| /);
  return cells?.filter((cell) => cell.trim() !== '').join(': ') ?? null;
}

const withoutMarks = (line: string): string =>
  line
    .replace(/\\([\\`*_{}[\]()#+!|~<>.=-])|[*`]|^#+ /g, (_, escaped?: string) => escaped ?? '')
    .replace(/\u200b/g, '')
    .replace(/&amp;/g, '&');
