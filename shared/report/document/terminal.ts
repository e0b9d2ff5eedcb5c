/** A report as a terminal shows it: headings bold, parts indented below them, columns aligned. */

import {
  type Block,
  type Inline,
  type Item,
  isEmpty,
  type List,
  type Table,
} from '../../api/document.ts';
import { inertLine } from '../inert.ts';
import { type Paint, painter } from '../paint.ts';

/** Blocks with an empty line between them. */
export const terminalText = (blocks: readonly Block[], colour: boolean): string =>
  `${blocks
    .filter((block) => !isEmpty(block))
    .map((block) => linesOf(block, painter(colour)).join('\n'))
    .join('\n\n')}\n`;

/** Blocks below each other, without colours. */
export const plainLines = (blocks: readonly Block[]): readonly string[] =>
  blocks.filter((block) => !isEmpty(block)).flatMap((block) => linesOf(block, painter(false)));

function linesOf(block: Block, paint: Paint, isInside = false): readonly string[] {
  const said = (text: Inline): string => inlineText(text, paint);
  switch (block.kind) {
    case 'paragraph':
      return [said(block.text)];
    case 'section': {
      const within = block.blocks.flatMap((one) => linesOf(one, paint, true));
      return [paint('heading', said(block.title)), ...within.map(indented)];
    }
    case 'list':
      return listLines(block, said);
    case 'table':
      return tableLines(block, said, (line) => paint(isInside ? 'aside' : 'heading', line));
    case 'changes': {
      const rows = aligned(
        // A row without values counts what was left out.
        block.rows.map(({ label, before, after }) =>
          before === '' && after === ''
            ? ([inertLine(label)] as const)
            : ([inertLine(label), `${said(before)} → ${said(after)}`] as const),
        ),
      );
      return block.isLed ? [paint('aside', `${block.title}:`), ...rows.map(indented)] : rows;
    }
    case 'pairs':
      return aligned(
        block.rows.map(([label, value]) => [inertLine(label), said(value)]),
        block.least,
      );
  }
}

const indented = (line: string): string => `  ${line}`;

function listLines({ lead, items }: List, said: (text: Inline) => string): readonly string[] {
  const lines = items.flatMap((item) =>
    isLong(item) ? [said(item.text), ...item.more.map((one) => indented(said(one)))] : [said(item)],
  );
  return lead === undefined ? lines : [said(lead), ...lines.map(indented)];
}

export const isLong = (item: Item): item is Extract<Item, { more: unknown }> =>
  typeof item === 'object' && 'more' in item;

/** Labels without a value stand alone, and push no value aside. */
const aligned = (
  rows: readonly (readonly [label: string, value?: string])[],
  least = 0,
): readonly string[] => {
  const valued = rows.filter(([, value]) => value !== undefined);
  const width = Math.max(least, ...valued.map(([label]) => label.length));
  return rows.map(([label, value]) =>
    value === undefined ? label : `${label.padEnd(width)}  ${value}`,
  );
};

function tableLines(
  { head, rows }: Table,
  said: (text: Inline) => string,
  headed: (line: string) => string,
): readonly string[] {
  const all = [head, ...rows].map((row) => row.map(said));
  const widths = head.map((_, column) =>
    Math.max(...all.map((row) => [...(row[column] ?? '')].length)),
  );
  const [first = '', ...others] = all.map((row) =>
    row
      .map((cell, column) => cell + ' '.repeat(widths[column]! - [...cell].length))
      .join('  ')
      .trimEnd(),
  );
  return [headed(first), ...others];
}

function inlineText(text: Inline, paint: Paint): string {
  if (typeof text === 'string') return inertLine(text);
  if ('words' in text) return inertLine(text.words);
  if ('strong' in text) return inlineText(text.strong, paint);
  if ('tone' in text) return paint(text.tone, inlineText(text.text, paint));
  return text.map((one) => inlineText(one, paint)).join('');
}
