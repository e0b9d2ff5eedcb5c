/**
 * The order that every hover has: the verdict, the result in bold, at most six rows, what widens or explains
 * them, and formula and source last. Works on the project's own Markdown, whose cells have their
 * bars escaped.
 */
import { FIRST, LAST } from './markdown.ts';

/** An editor's small window shows this many without scrolling. */
const MOST_ROWS = 6;
/** More than this in one line is a table again. */
const MOST_RESULTS = 4;

/** A table's rows, without the line under its head. */
type Block = { readonly rows: readonly (readonly string[])[] } | { readonly text: string };

/** The same words: verdict and results first, rows beyond the sixth as lines of text, formulas last. */
export function laidOut(markdown: string): string {
  const blocks = markdown.split('\n\n').map(blockOf);
  const first = blocks.findIndex((block) => 'rows' in block && isOfPairs(block.rows));
  const results = first < 0 ? [] : resultsOf(blocks[first]!);
  let left = MOST_ROWS;
  const laid = blocks.flatMap((block, at) => {
    if ('text' in block) return [block.text];
    const rows = at === first ? block.rows.slice(results.length) : block.rows;
    const shown = rows.slice(0, left);
    left -= shown.length;
    const folded = rows.slice(shown.length).map(foldedRow).join(' · ');
    return [tableOf(shown), folded].filter((text) => text !== '');
  });
  const result = results.map(([label = '', value = '']) => resultWords(label, value));
  const isBetween = (text: string): boolean => !text.startsWith(FIRST) && !text.startsWith(LAST);
  return [
    ...laid.filter((text) => text.startsWith(FIRST)).map((text) => text.slice(FIRST.length)),
    ...(result.length > 0 ? [result.join(' · ')] : []),
    ...laid.filter(isBetween),
    ...laid.filter((text) => text.startsWith(LAST)).map((text) => text.replaceAll(LAST, '')),
  ].join('\n\n');
}

function blockOf(text: string): Block {
  const lines = text.split('\n');
  if (!lines.every((line) => line.startsWith('| ') || isUnderHead(line))) return { text };
  return { rows: lines.filter((line) => !isUnderHead(line)).map(cellsOf) };
}

const isUnderHead = (line: string): boolean => /^\|[:|-]+\|$/.test(line);

const cellsOf = (line: string): readonly string[] =>
  line.replace(/^\| | \|$/g, '').split(/(?<!\\) \| /);

const isOfPairs = (rows: readonly (readonly string[])[]): boolean =>
  rows.every(({ length }) => length === 2);

/** The first rows, as far as they are in bold. */
function resultsOf(block: Block): readonly (readonly string[])[] {
  if ('text' in block) return [];
  const end = block.rows.findIndex((cells) => !cells.some((cell) => cell.startsWith('**')));
  return block.rows.slice(0, Math.min(end < 0 ? block.rows.length : end, MOST_RESULTS));
}

/** A name in bold is the result itself; a label only says of what the result is. */
const resultWords = (label: string, value: string): string =>
  label.startsWith('**') ? `${label} · ${value}` : `${capital(label)}: ${value}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const foldedRow = ([label = '', ...values]: readonly string[]): string =>
  `${label.replace(/^· /, '')}: ${values.join(', ')}`;

function tableOf(rows: readonly (readonly string[])[]): string {
  const [head, ...body] = rows.map((cells) => `| ${cells.join(' | ')} |`);
  if (head === undefined) return '';
  return [head, `|${rows[0]!.map(() => ':--').join('|')}|`, ...body].join('\n');
}
