/** Brackets that are not sound: which one, and which of the items can be read. */
import { closingQuote } from '../syntax/keys.ts';
import { blockMap, pair, scalar, span } from '../syntax/nodes.ts';
import { quote } from '../syntax/quotes.ts';
import type { Mender } from './mend.ts';
import { hasKeys, writtenEnd } from './mend-value.ts';
import { fix } from './problems.ts';
import type { Node, Pair } from './tree.ts';

interface Scan {
  /** Just behind the closing bracket; where the scan stopped, if there is none. */
  readonly end: number;
  readonly fault: null | 'unclosed' | 'mismatch' | 'quote';
  /** Brackets still open, from the outside. */
  readonly open: readonly number[];
  /** The closing bracket that fits none, or the quote that is not closed. */
  readonly at: number;
  /** Commas between the items of the outermost brackets. */
  readonly commas: readonly number[];
}

const closers: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** The collection that opens at `at`; what belongs to it ends before `to`. */
export function mendFlow(mender: Mender, at: number, to: number): Node {
  const { text, problems } = mender;
  const scan = scanFlow(mender, at, to);
  if (scan.fault === 'quote') tellQuote(mender, scan);
  else if (scan.fault === 'mismatch') {
    const open = scan.open.at(-1) as number;
    problems.syntax('unmatched-bracket', span(open, open + 1), {
      bracket: text[open] as string,
      found: text[scan.at] as string,
    });
  } else if (scan.fault === 'unclosed') tellUnclosed(mender, scan, to);
  const isSound = scan.fault === null;
  const last = isSound ? scan.end - 1 : scan.end;
  const node = readItems(mender, at, last, scan, isSound);
  if (!isSound) return node;
  const line = mender.lines.of(scan.end - 1);
  const end = writtenEnd(text, scan.end, line.end);
  if (end > scan.end) {
    const rest = scan.end + text.slice(scan.end, end).search(/\S/);
    problems.syntax('text-after-bracket', span(rest, end), {
      text: text.slice(rest, end).slice(0, 60),
    });
  }
  return node;
}

function scanFlow(mender: Mender, from: number, to: number): Scan {
  const { text, lines } = mender;
  const open: number[] = [];
  const commas: number[] = [];
  const stop = (end: number, fault: Scan['fault'], at: number): Scan => ({
    end,
    fault,
    open,
    at,
    commas,
  });
  for (let at = from; at < to; at++) {
    const mark = text[at] as string;
    const before = text[at - 1] ?? ' ';
    if (mark === '{' || mark === '[') open.push(at);
    else if (mark === '}' || mark === ']') {
      if (closers[text[open.at(-1) as number] as string] !== mark) return stop(at, 'mismatch', at);
      open.pop();
      if (open.length === 0) return stop(at + 1, null, at);
    } else if ((mark === '"' || mark === "'") && /[\s{[,:]/.test(before)) {
      const close = closingQuote(text, at, to);
      if (close < 0 || opensAnother(text, close) || hasKeys(mender, lines.of(at).next, close)) {
        return stop(lines.of(at).end, 'quote', at);
      }
      at = close;
    } else if (mark === '#' && /\s/.test(before)) at = lines.of(at).end - 1;
    else if (mark === ',' && open.length === 1) commas.push(at);
  }
  return stop(text.slice(0, to).trimEnd().length, 'unclosed', to);
}

/** A mark with a blank before it and text behind closes nothing: it opens, as in `{ a: "b, c: "d }`. */
const opensAnother = (text: string, close: number): boolean =>
  /[\s{[,:]/.test(text[close - 1] as string) && /[^\s,:{}[\]#]/.test(text[close + 1] ?? ' ');

function tellQuote(mender: Mender, { at, open }: Scan): void {
  const { text, problems } = mender;
  const line = mender.lines.of(at);
  const mark = text[at] as string;
  const behind = text.slice(at + 1, line.end);
  const inMap = text[open.at(-1) as number] === '{';
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
 * How much of the text behind a quote's mark it may have been meant to take in, likeliest first. Only
 * what makes a sound plan is offered, so that the likeliest that does is the one.
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
function tellUnclosed(mender: Mender, scan: Scan, to: number): void {
  const { text, problems } = mender;
  const open = scan.open.at(-1) as number;
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
  const isLone = scan.open.length === 1;
  const gap = closer === '}' && isOneLine && text[open + 1] === ' ' ? ' ' : '';
  problems.syntax(
    'unmatched-bracket',
    span(open, open + 1),
    { bracket: text[open] as string },
    isLone ? [fix('close-bracket', end, end, gap + closer, { bracket: closer })] : [],
  );
}

function hiddenBy(mender: Mender, open: number, to: number, closer: string) {
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
function readItems(mender: Mender, at: number, last: number, scan: Scan, tell: boolean): Node {
  const { text } = mender;
  const isMap = text[at] === '{';
  const bounds = [at, ...scan.commas.filter((comma) => comma < last), last];
  const pairs: Pair[] = [];
  const items: (Node | null)[] = [];
  for (let index = 0; index + 1 < bounds.length; index++) {
    const from = (bounds[index] as number) + 1;
    const end = bounds[index + 1] as number;
    if (from >= end || !/\S/.test(text.slice(from, end))) continue;
    const node = readItem(mender, from, end, isMap, tell);
    if (node?.kind === 'map') for (const pair of node.pairs) pairs.push(pair);
    else if (node?.kind === 'seq') for (const item of node.items) items.push(item);
  }
  const place = span(at, scan.end);
  return isMap
    ? { kind: 'map', span: place, flow: true, pairs }
    : { kind: 'seq', span: place, flow: true, items };
}

function readItem(
  mender: Mender,
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
    // Behind what may be a whole value, what may be the next key: a comma may lack.
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
