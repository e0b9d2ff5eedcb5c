/** A report as Markdown (CommonMark with the tables and task lists of GitHub's flavour). */

import { type Block, type Inline, type Item, isEmpty, spans } from '../../api/document.ts';
import { message } from '../../words/message.ts';
import { inertLine } from '../inert.ts';
import { isLong } from './terminal.ts';

export const markdownText = (blocks: readonly Block[]): string => `${joined(blocks)}\n`;

const joined = (blocks: readonly Block[]): string =>
  blocks
    .filter((block) => !isEmpty(block))
    .map(blockText)
    .join('\n\n');

function blockText(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return lineText(block.text);
    case 'section': {
      const title = `${'#'.repeat(block.level)} ${lineText(block.title).replace(/(\s)(#+\s*)$/, '$1\\$2')}`;
      return block.blocks.length > 0 ? `${title}\n\n${joined(block.blocks)}` : title;
    }
    case 'list': {
      const items = block.items
        .map((item, index) => itemText(item, block.done?.[index]))
        .join('\n');
      return block.lead === undefined ? items : `${lineText(block.lead)}\n\n${items}`;
    }
    case 'table':
      return tableText(block.head, block.rows);
    case 'changes':
      return [
        message`| ${inlineText(block.title)} | before | after |`,
        '| --- | --- | --- |',
        ...block.rows.map(({ label, before, after }) => rowText([label, before, after])),
      ].join('\n');
    case 'pairs':
      return block.rows.map(([label, value]) => `- ${lineText([label, ': ', value])}`).join('\n');
  }
}

function itemText(item: Item, done: boolean | undefined): string {
  const mark = done === undefined ? '-' : done ? '- [x]' : '- [ ]';
  return isLong(item)
    ? [`${mark} ${lineText(item.text)}`, ...item.more.map((one) => `  - ${lineText(one)}`)].join(
        '\n',
      )
    : `${mark} ${lineText(item)}`;
}

const rowText = (cells: readonly Inline[]): string => `| ${cells.map(inlineText).join(' | ')} |`;

function tableText(head: readonly Inline[], rows: readonly (readonly Inline[])[]): string {
  const whole = rows.map((row) => head.map((_, column) => row[column] ?? ''));
  return [rowText(head), `| ${head.map(() => '---').join(' | ')} |`, ...whole.map(rowText)].join(
    '\n',
  );
}

/** A line of its own; what opens a list or a heading there is escaped, and nowhere else. */
const lineText = (text: Inline): string =>
  inlineText(text)
    .replace(/^(\s*)([-+=#>])/, '$1\\$2')
    // "1. " begins a list; "10.4 min" doesn't.
    .replace(/^(\s*\d{1,9})([.)])(?=\s|$)/, '$1\\$2');

function inlineText(text: Inline): string {
  if (typeof text === 'string') return escaped(inertLine(text));
  if ('words' in text) return spans(inertLine(text.words)).map(spanText).join('');
  if ('strong' in text) return `**${inlineText(text.strong)}**`;
  if ('tone' in text) return inlineText(text.text);
  return text.map(inlineText).join('');
}

/** Nothing in a span of code is escaped, so what would end it or a table's cell makes it none. */
const spanText = ({ text, isCode }: ReturnType<typeof spans>[number]): string =>
  isCode && !/[|\\<>]/.test(text) ? `\`${text}\`` : escaped(isCode ? `\`${text}\`` : text);

/** Nothing in it is markup, wherever in a line it stands; an address is no link. */
const escaped = (text: string): string =>
  text
    .replace(/[\\`*_[\]|~<]/g, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/:\/\//g, ':\u200b//')
    // GitHub's flavour: an address without a scheme, somebody's name, an issue's number.
    .replace(/\bwww\./gi, 'www\u200b.')
    .replace(/([@#])(?=[\p{L}\p{N}])/gu, '$1\u200b');

/** A text of a plan's as a line of Markdown, nothing in which is markup. */
export const inertMarkdown = (text: string): string => lineText(text);
