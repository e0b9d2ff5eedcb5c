/** Finds the fault in broken brackets, and the items that can still be read. */

import { writtenEnd } from '../syntax/lines.ts';
import { blockMap, pair, scalar, span } from '../syntax/nodes.ts';
import { quote } from '../syntax/quotes.ts';
import type { MapNode, Node, Pair, SeqNode } from '../syntax/tree.ts';
import { fix } from './problems.ts';
import type { Reading } from './reading.ts';

type Flow = MapNode | SeqNode;

const closers: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** The first thing wrong with brackets, or with a quote in them. */
interface Fault {
  readonly kind: 'quote' | 'mismatch' | 'unclosed';
  /** The quote, the closing bracket that fits none, or the end. */
  readonly at: number;
  /** The innermost bracket that is open there. */
  readonly open: number;
}

/** A collection; what belongs to it ends before `to`. */
export function recoverFlow(reading: Reading, flow: Flow, to: number): Node {
  const { text, lines, problems } = reading;
  const { start, end } = flow.span;
  const fault = faultOf(reading, flow, to);
  if (fault) {
    tellFault(reading, fault, start, to);
    const last = fault.kind === 'quote' ? lines.of(fault.at).end : fault.at;
    return readItems(reading, flow, fault, last);
  }
  const node = readItems(reading, flow, null, end);
  const stop = writtenEnd(text, end, lines.of(end - 1).end);
  if (stop > end) {
    const rest = end + text.slice(end, stop).search(/\S/);
    const args = { text: text.slice(rest, stop).slice(0, 60) };
    problems.syntax('text-after-bracket', span(rest, stop), args);
  }
  return node;
}

function tellFault(reading: Reading, fault: Fault, at: number, to: number): void {
  const { text, problems } = reading;
  const { kind, open } = fault;
  if (kind === 'quote') tellQuote(reading, fault);
  else if (kind === 'unclosed') tellUnclosed(reading, open, open === at, to);
  else {
    const args = { bracket: text[open] as string, found: text[fault.at] as string };
    problems.syntax('unmatched-bracket', span(open, open + 1), args);
  }
}

function faultOf(reading: Reading, node: Flow, to: number): Fault | null {
  const { text, syntax } = reading;
  const defects = reading.defects(node.span.start, node.span.end);
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
  for (const [each, own] of syntax.marks)
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

function tellQuote(reading: Reading, { at, open }: Fault): void {
  const { text, problems } = reading;
  const line = reading.lines.of(at);
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
function tellUnclosed(reading: Reading, open: number, isLone: boolean, to: number): void {
  const { text, problems } = reading;
  const closer = closers[text[open] as string] as string;
  const hidden = hiddenBy(reading, open, to, closer);
  if (hidden) {
    const written = text.slice(hidden.start, hidden.end);
    problems.misread('hash-in-value', hidden, { text: written }, [
      fix('quote', hidden.start, hidden.end, quote(written), { text: written }),
    ]);
    return;
  }
  const line = reading.lines.of(open);
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

function hiddenBy(reading: Reading, open: number, to: number, closer: string) {
  const { text } = reading;
  const hash = text.slice(open, to).search(/[ \t]#[^\s#]/);
  if (hash < 0) return null;
  const at = open + hash + 1;
  const line = reading.lines.of(at);
  const rest = text.slice(at, line.end);
  const length = rest.slice(0, rest.search(/[,}\]]/)).trimEnd().length;
  if (!/[,}\]]/.test(rest) || !rest.includes(closer)) return null;
  const before = text.slice(open, at);
  const start = open + 1 + Math.max(before.lastIndexOf(': '), before.lastIndexOf(','), 0);
  return span(start + text.slice(start, at).search(/[^ :]/), at + length);
}

/** Reads each item by itself; faults inside items are told only where the brackets are sound. */
function readItems(reading: Reading, flow: Flow, fault: Fault | null, end: number): Node {
  const { text, syntax } = reading;
  const last = fault ? end : end - 1;
  const marks = syntax.marks.get(flow)!.filter((mark) => mark < (fault?.at ?? last));
  const pairs: Pair[] = [];
  const items: (Node | null)[] = [];
  marks.forEach((mark, index) => {
    const from = mark + 1;
    const to = marks[index + 1] ?? last;
    if (from >= to || !/\S/.test(text.slice(from, to))) return;
    const item = readItem(reading, from, to, flow.kind === 'map', !fault);
    if (item?.kind === 'map') for (const pair of item.pairs) pairs.push(pair);
    else if (item?.kind === 'seq') for (const inner of item.items) items.push(inner);
  });
  const place = span(flow.span.start, end);
  return flow.kind === 'map'
    ? { kind: 'map', span: place, flow: true, pairs }
    : { kind: 'seq', span: place, flow: true, items };
}

function readItem(
  reading: Reading,
  from: number,
  end: number,
  isMap: boolean,
  tell: boolean,
): Node | null {
  const { text, problems } = reading;
  const opening = isMap ? 'k: {' : 'k: [';
  // The break keeps a comment at the item's end from taking in the bracket.
  const made = `${opening}${text.slice(from, end)}\n ${isMap ? '}' : ']'}\n`;
  const { map } = reading.read(made, opening.length, from);
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
