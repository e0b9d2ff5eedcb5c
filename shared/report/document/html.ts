/** Parts of a report as HTML, as the page's style knows them. */

import {
  type Block,
  type Inline,
  type Item,
  type Section,
  spans,
  type Table,
} from '../../api/document.ts';
import type { Attributes, Child, Element } from '../../api/drawing.ts';
import { message } from '../../words/message.ts';
import { el } from '../markup.ts';
import { isLong } from './terminal.ts';

interface HtmlHooks {
  /** Boxes are ticked on paper or in the page; a view that is only read has them as they are. */
  readonly isRead?: boolean;
  /** What the box of a list's item carries; with it, boxes are ticked in a view that is only read. */
  readonly box?: (index: number) => Attributes;
  /** What a row of a table carries, and what stands in its cells. */
  readonly row?: (index: number) => Attributes;
  readonly cell?: (text: Inline, index: number) => Child;
}

export function blockHtml(block: Block, hooks: HtmlHooks = {}): Element {
  switch (block.kind) {
    case 'paragraph':
      return el('p', {}, ...inline(block.text));
    case 'section':
      return sectionHtml(block, hooks);
    case 'list': {
      const { done, items, of, lead } = block;
      const disabled = hooks.isRead === true && !hooks.box;
      const ticked = (text: readonly Child[], index: number): Element =>
        el(
          'label',
          {},
          el('input', {
            type: 'checkbox',
            checked: done?.[index] === true,
            disabled,
            ...hooks.box?.(index),
          }),
          el('span', {}, ...text),
        );
      const each = items.map((item, index) => {
        const text = itemHtml(item);
        return done ? el('li', {}, ticked(text, index)) : el('li', {}, ...text);
      });
      const all = el('ul', { class: done ? 'checks' : (of ?? 'limits') }, ...each);
      return lead === undefined ? all : el('div', {}, el('p', {}, ...inline(lead)), all);
    }
    case 'table':
      return tableHtml(block, hooks);
    case 'changes': {
      const rows = block.rows.map(({ label, before, after }) => [label, before, after]);
      return tableHtml(
        { kind: 'table', head: [block.title, message`before`, message`after`], rows },
        hooks,
      );
    }
    case 'pairs': {
      const pair = ([label, value]: (typeof block.rows)[number]) => [
        el('dt', {}, label),
        el('dd', {}, ...inline(value)),
      ];
      return el('dl', { class: 'bench' }, ...block.rows.flatMap(pair));
    }
  }
}

export const sectionHtml = ({ level, title, blocks }: Section, hooks: HtmlHooks = {}): Element =>
  el(
    'section',
    { class: 'block' },
    el(`h${level}`, {}, ...inline(title)),
    ...blocks.map((block) => blockHtml(block, hooks)),
  );

function itemHtml(item: Item): readonly Child[] {
  if (!isLong(item)) return inline(item);
  const more = item.more.map((one) => el('li', {}, ...inline(one)));
  return [...inline(item.text), el('ul', {}, ...more)];
}

function tableHtml({ head, rows, isNamed, numbers }: Table, hooks: HtmlHooks): Element {
  const asNumber = (column: number) => ({ class: column === numbers ? 'number' : undefined });
  const heads = head.map((one, at) => el('th', { scope: 'col', ...asNumber(at) }, ...inline(one)));
  const cell = (text: Inline, row: number, column: number): Element => {
    const content = hooks.cell ? [hooks.cell(text, row)] : inline(text);
    return isNamed && column === 0
      ? el('th', { scope: 'row' }, ...content)
      : el('td', asNumber(column), ...content);
  };
  const body = rows.map((row, index) =>
    el('tr', hooks.row?.(index) ?? {}, ...row.map((text, column) => cell(text, index, column))),
  );
  return el('table', {}, el('thead', {}, el('tr', {}, ...heads)), el('tbody', {}, ...body));
}

/** What has a tone of its own is marked by its class, and by nothing besides. */
export function inline(text: Inline): readonly Child[] {
  if (typeof text === 'string') return [text];
  if ('words' in text)
    return spans(text.words).map((part) => (part.isCode ? el('code', {}, part.text) : part.text));
  if ('strong' in text) return [el('strong', {}, ...inline(text.strong))];
  if ('tone' in text) return [el('span', { class: `severity ${text.tone}` }, plain(text.text))];
  return text.flatMap(inline);
}

function plain(text: Inline): string {
  if (typeof text === 'string') return text;
  if ('words' in text) return text.words;
  if ('strong' in text) return plain(text.strong);
  if ('tone' in text) return plain(text.text);
  return text.map(plain).join('');
}
