/** Finds the fault in broken brackets, and the items that can still be read. */

import { type FlowSyntax, parseFlow } from '../syntax/flow.ts';
import { writtenEnd } from '../syntax/lines.ts';
import { blockMap, pair, scalar, span } from '../syntax/nodes.ts';
import { quote } from '../syntax/quotes.ts';
import { fix } from './problems.ts';
import type { Mending } from './recovery.ts';
import type { Node, Pair } from './tree.ts';

const closers: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** The first thing wrong with brackets, or with a quote in them. */
interface Fault {
  readonly kind: 'quote' | 'mismatch' | 'unclosed';
  /** The quote, the closing bracket that fits none, or the end. */
  readonly at: number;
  /** The innermost bracket that is open there. */
  readonly open: number;
}

/** The collection that opens at `at`; what belongs to it ends before `to`. */
export function mendFlow(mender: Mending, at: number, to: number): Node | null {
  const { text, lines, problems } = mender;
  const flow = parseFlow(text, at, to);
  if (!flow) {
    mender.tellUnreadable(at);
    return null;
  }
  const fault = faultOf(text, flow, to);
  if (fault) {
    tellFault(mender, fault, at, to);
    const end = fault.kind === 'quote' ? lines.of(fault.at).end : fault.at;
    return readItems(mender, flow, fault, end);
  }
  const { end } = flow.node.span;
  const node = readItems(mender, flow, null, end);
  const stop = writtenEnd(text, end, lines.of(end - 1).end);
  if (stop > end) {
    const rest = end + text.slice(end, stop).search(/\S/);
    const args = { text: text.slice(rest, stop).slice(0, 60) };
    problems.syntax('text-after-bracket', span(rest, stop), args);
  }
  return node;
}

function tellFault(mender: Mending, fault: Fault, at: number, to: number): void {
  const { text, problems } = mender;
  const { kind, open } = fault;
  if (kind === 'quote') tellQuote(mender, fault);
  else if (kind === 'unclosed') tellUnclosed(mender, open, open === at, to);
  else {
    const args = { bracket: text[open] as string, found: text[fault.at] as string };
    problems.syntax('unmatched-bracket', span(open, open + 1), args);
  }
}

function faultOf(text: string, { node, defects, marks }: FlowSyntax, to: number): Fault | null {
  const quotes = defects.flatMap(({ kind, span: { start } }) =>
    kind === 'open-quote' ? [start] : kind === 'behind' ? reopened(text, start - 1) : [],
  );
  const wrong = defects.flatMap(({ kind, span: { start } }) =>
    kind === 'wrong-bracket' ? [start] : [],
  );
  const at = Math.min(...quotes, ...wrong, node.span.end);
  const kind = quotes.includes(at) ? 'quote' : wrong.includes(at) ? 'mismatch' : 'unclosed';
  if (kind === 'unclosed' && !defects.some((each) => each.kind === 'open-bracket')) return null;
  let open = node.span.start;
  for (const [each, own] of marks)
    if (each.kind !== 'scalar' && each.flow && each.span.start < at && own.at(-1)! >= at)
      open = Math.max(open, each.span.start);
  return { kind, at: kind === 'unclosed' ? text.slice(0, to).trimEnd().length : at, open };
}

/** Where a quote opens that the one at `close` was taken to close, though that opens another. */
const reopened = (text: string, close: number): number[] =>
  /["']/.test(text[close] as string) && opensAnother(text, close)
    ? [text.lastIndexOf(text[close] as string, close - 1)]
    : [];

/**
 * A quotation mark with a blank before it and text after it opens a quote, as in `{ a: "b, c: "d
 * }`.
 */
const opensAnother = (text: string, close: number): boolean =>
  /[\s{[,:]/.test(text[close - 1] as string) && /[^\s,:{}[\]#]/.test(text[close + 1] ?? ' ');

function tellQuote(mender: Mending, { at, open }: Fault): void {
  const { text, problems } = mender;
  const line = mender.lines.of(at);
  const mark = text[at] as string;
  const behind = text.slice(at + 1, line.end);
  const inMap = text[open] === '{';
  const isKey = inMap && /[{,]\s*$/.test(text.slice(0, at));
  problems.syntax(
    'unclosed-quote',
    span(at, at + 1),
    { quote: mark },
    closings(behind, inMap, isKey).map((length) => {
      const end = at + 1 + length;
      return fix('close-quote', end, end, mark, { quote: mark });
    }),
  );
}

const inOrder = (...places: readonly number[]): number[] =>
  places.filter((place) => place >= 0).sort((a, b) => a - b);

/**
 * How much of the text after a quotation mark the quote may have been meant to contain, likeliest
 * first. Only ends that give a valid plan are offered, so the likeliest valid one is taken.
 */
function closings(behind: string, inMap: boolean, isKey: boolean): number[] {
  const comment = behind.search(/\s#/);
  const written = comment < 0 ? behind : behind.slice(0, comment);
  // Text may hold commas; that of the next field has a key behind it.
  const nextField = written.search(/,\s*[a-z][a-z0-9-]*:(\s|$)/);
  const bracket = written.search(/[}\]]/);
  const comma = written.search(/,/);
  const last = written.search(/\s*[}\]]+\s*$/);
  const places = isKey
    ? [written.search(/\s*:(\s|$)/)]
    : inMap
      ? [...inOrder(nextField, bracket), comma, last]
      : [...inOrder(comma, bracket), last];
  const lengths = places
    .map((place) => (place < 0 ? written : written.slice(0, place)).trimEnd().length)
    .filter((length) => length > 0);
  return [...new Set(lengths)];
}

/** A bracket whose partner is missing, or has been taken into a comment by ` #`. */
function tellUnclosed(mender: Mending, open: number, isLone: boolean, to: number): void {
  const { text, problems } = mender;
  const closer = closers[text[open] as string] as string;
  const hidden = hiddenBy(mender, open, to, closer);
  if (hidden) {
    const written = text.slice(hidden.start, hidden.end);
    problems.misread('hash-in-value', hidden, { text: written }, [
      fix('quote', hidden.start, hidden.end, quote(written), { text: written }),
    ]);
    return;
  }
  const line = mender.lines.of(open);
  const isOneLine = !/\S/.test(text.slice(line.next, to));
  const end = isOneLine ? writtenEnd(text, open, line.end) : text.slice(0, to).trimEnd().length;
  const gap = closer === '}' && isOneLine && text[open + 1] === ' ' ? ' ' : '';
  problems.syntax(
    'unmatched-bracket',
    span(open, open + 1),
    { bracket: text[open] as string },
    isLone ? [fix('close-bracket', end, end, gap + closer, { bracket: closer })] : [],
  );
}

function hiddenBy(mender: Mending, open: number, to: number, closer: string) {
  const { text } = mender;
  const hash = text.slice(open, to).search(/[ \t]#[^\s#]/);
  if (hash < 0) return null;
  const at = open + hash + 1;
  const line = mender.lines.of(at);
  const rest = text.slice(at, line.end);
  const length = rest.slice(0, rest.search(/[,}\]]/)).trimEnd().length;
  if (!/[,}\]]/.test(rest) || !rest.includes(closer)) return null;
  const before = text.slice(open, at);
  const start = open + 1 + Math.max(before.lastIndexOf(': '), before.lastIndexOf(','), 0);
  return span(start + text.slice(start, at).search(/[^ :]/), at + length);
}

/** Reads each item by itself; faults inside items are told only where the brackets are sound. */
function readItems(mender: Mending, flow: FlowSyntax, fault: Fault | null, end: number): Node {
  const { text } = mender;
  const { node, marks } = flow;
  const isMap = node.kind === 'map';
  const last = fault ? end : end - 1;
  const bounds = [...marks.get(node)!.filter((mark) => mark < (fault?.at ?? last)), last];
  const pairs: Pair[] = [];
  const items: (Node | null)[] = [];
  for (let index = 0; index + 1 < bounds.length; index++) {
    const from = (bounds[index] as number) + 1;
    const to = bounds[index + 1] as number;
    if (from >= to || !/\S/.test(text.slice(from, to))) continue;
    const item = readItem(mender, from, to, isMap, !fault);
    if (item?.kind === 'map') for (const pair of item.pairs) pairs.push(pair);
    else if (item?.kind === 'seq') for (const inner of item.items) items.push(inner);
  }
  const place = span(node.span.start, end);
  return isMap
    ? { kind: 'map', span: place, flow: true, pairs }
    : { kind: 'seq', span: place, flow: true, items };
}

function readItem(
  mender: Mending,
  from: number,
  end: number,
  isMap: boolean,
  tell: boolean,
): Node | null {
  const { text, problems } = mender;
  const opening = isMap ? 'k: {' : 'k: [';
  // The break keeps a comment at the item's end from taking in the bracket.
  const made = `${opening}${text.slice(from, end)}\n ${isMap ? '}' : ']'}\n`;
  const { map } = mender.read(made, opening.length, from);
  if (map) return map.pairs[0]?.value ?? null;
  if (!tell) return null;
  const start = from + text.slice(from, end).search(/\S/);
  const stop = start + text.slice(start, end).trimEnd().length;
  const written = text.slice(start, stop);
  const value = isMap ? /^[^:{}[\]"'\n]*:[ \t]+(?=[^{}[\]"'\n]*:([ \t]|$))/.exec(written) : null;
  if (value && !/[{}[\]"'\n]/.test(written)) {
    const at = start + value[0].length;
    const inner = text.slice(at, stop);
    const keyEnd = start + value[0].indexOf(':');
    const key = scalar(text.slice(start, keyEnd).trimEnd(), 'plain', start, keyEnd);
    // After a possible whole value, a possible next key: a comma may be missing.
    const next = /^(.*?)[;,]?\s+([a-z][a-z0-9-]*):\s/.exec(inner);
    const [, first = '', name = ''] = next ?? [];
    const behind = at + first.length;
    problems.misread(
      'colon-in-value',
      span(at, stop),
      { text: inner, ...(next && { next: name }) },
      [
        ...(next
          ? [fix('add-comma', behind, at + next[0].lastIndexOf(name), ', ', { text: name })]
          : []),
        fix('quote', at, stop, quote(inner), { text: inner }),
      ],
    );
    return blockMap([pair(key, scalar(inner, 'plain', at, stop), stop)]);
  }
  problems.syntax('unreadable-item', span(start, stop), { text: written.slice(0, 60) });
  return null;
}
