/** The sentences of a page in Markdown: paragraphs, items and cells, without code. */

/** A piece of a page that is read in one go, with the number of its first line. */
export interface Piece {
  readonly line: number;
  readonly text: string;
}

/** As many line breaks as before, so that lines keep their numbers. */
const blank = (text: string): string => text.replace(/[^\n]/g, '');

/** Blocks of code, whether fenced or indented below a blank line, and comments. */
const withoutBlocks = (page: string): string =>
  page
    .replace(/<!--[\s\S]*?-->/g, blank)
    .replace(/^```[\s\S]*?^```$/gm, blank)
    .replace(/(?<=\n\n)(?: {4}.*\n?)+/g, blank);

/** Names, values and plans are no English: each becomes an empty name. Links leave their words. */
const inWords = (text: string): string =>
  text
    .replace(/(`+)(?!`)[\s\S]*?[^`]\1(?!`)/g, '``')
    .replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/https?:\S+/g, '')
    .replace(/\*\*|(?<![\w*])[*_](?=\S)|(?<=\S)[*_](?![\w*])/g, '')
    .replace(/\\(?=[\\*<>[\]|])/g, '');

/** An item, a heading, a quotation or a row begins anew; all else goes on. */
const BEGINS = /^\s*(?:[-*] |\d+\. |#|>|\|)/;

export function piecesOf(page: string): readonly Piece[] {
  const pieces: { line: number; text: string }[] = [];
  let isOpen = false;
  for (const [index, raw] of withoutBlocks(page).split('\n').entries()) {
    const text = raw.trim();
    if (text === '') {
      isOpen = false;
    } else if (text.startsWith('|')) {
      const cells = text.split(/(?<!\\)\|/).slice(1, -1);
      for (const cell of cells) pieces.push({ line: index + 1, text: cell.trim() });
      isOpen = false;
    } else if (isOpen && !BEGINS.test(raw)) {
      const last = pieces.at(-1);
      if (last) last.text += ` ${text}`;
    } else {
      pieces.push({ line: index + 1, text: text.replace(/^(?:[-*>]|\d+\.|#+)\s+/, '') });
      isOpen = !text.startsWith('#');
    }
  }
  return pieces
    .map(({ line, text }) => ({ line, text: inWords(text) }))
    .filter(({ text }) => /\p{L}/u.test(text));
}
