import {
  type CancellationToken,
  type Hover,
  MarkupKind,
  type Position,
} from 'vscode-languageserver';
import type { Core, HoverPicture } from '../../shared/api/facade.ts';
import type { DrawnFrame } from '../../shared/api/frame.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertMarkdown } from '../../shared/report/document/markdown.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Between } from '../slices.ts';
import { frameInSlices, pageFrame } from './frame.ts';

/** Pixels across a hover's picture: as wide as a small window of it. */
const FRAME_WIDTH = 240;

export async function hover(
  core: Core,
  client: ClientFeatures,
  file: FileId,
  position: Position,
  token: CancellationToken,
  between?: Between,
): Promise<Hover | null> {
  const found = core.hover(file, position);
  if (!found) return null;
  const { markdown, range, frameOf } = found;
  if (!client.markdown)
    return { contents: { kind: MarkupKind.PlainText, value: plainText(markdown) }, range };
  const frame =
    frameOf !== undefined && client.showsImages
      ? await frameInSlices(core, file, frameOf, FRAME_WIDTH, token, between)
      : null;
  const drawn = client.showsImages ? (found.pictures ?? []).map(drawingOf) : [];
  const value = [markdown, ...drawn, ...(frame?.ok ? [imageOf(frame)] : [])].join('\n\n');
  return { contents: { kind: MarkupKind.Markdown, value }, range };
}

/** An SVG that is ASCII is a string of its own bytes. */
const drawingOf = ({ svg, alt }: HoverPicture): string =>
  `![${inertMarkdown(alt)}](data:image/svg+xml;base64,${btoa(svg)})`;

function imageOf(frame: Extract<DrawnFrame, { ok: true }>): string {
  const { src, caption } = pageFrame(frame);
  const alt = message`The frame as traced from the plan`;
  return `![${inertMarkdown(alt)}](${src})\n\n${inertMarkdown(caption.join(' '))}`;
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
