/** What stands round a place within braces or brackets, closed or not. */
import { colonOf } from './nodes.ts';
import type { Marks } from './syntax.ts';
import type { MapNode, Node, Pair, Path, SeqNode, Span } from './tree.ts';

/** A place that can be written at; offsets are those of the text. */
export interface Place {
  /** To the mapping of a `key`, to the list of an `item` without its dash, else to the value. */
  readonly path: Path;
  /** `open`: a value on a line of its own, which may become a mapping or a list as well. */
  readonly slot: 'key' | 'value' | 'open' | 'item';
  /** What new text replaces. */
  readonly from: number;
  readonly to: number;
  /** Behind the colon of a key at the place; `to` where there is none. */
  readonly colonEnd: number;
  /** What keeps new text from running into its neighbours. */
  readonly before: string;
  readonly after: string;
  /** Of a key at the place: whether a colon follows, and a value behind it. */
  readonly pair: 'word' | 'colon' | 'value';
  /** Keys of the mapping, or items of the list, but for the one at the place. */
  readonly beside: readonly string[];
}

type FlowPlace = Omit<Place, 'pair' | 'colonEnd'> & Partial<Place>;
type Flow = MapNode | SeqNode;

/** Behind the bracket that opens a collection, and not behind the one that closes it. */
export const isInside = (node: Flow, marks: Marks, at: number): boolean =>
  at > node.span.start && at <= marks.get(node)!.at(-1)!;

/** The place in the collection at `path` that `at` is inside of. */
export function placeInFlow(
  text: string,
  node: Flow,
  marks: Marks,
  path: Path,
  at: number,
): FlowPlace | null {
  const own = marks.get(node)!;
  const index = own.findLastIndex((mark) => mark < at);
  const part: Span = { start: own[index]! + 1, end: own[index + 1]! };
  const within = (inner: Node | null | undefined): inner is Flow =>
    !!inner && inner.kind !== 'scalar' && isInside(inner, marks, at);
  const holds = ({ span }: Pair | Node): boolean =>
    span.start >= part.start && span.start < part.end;
  let place: FlowPlace | null;
  if (node.kind === 'map') {
    const pair = node.pairs.find(holds) ?? null;
    const value = pair?.value;
    if (within(value)) return placeInFlow(text, value, marks, [...path, pair!.key.text], at);
    const beside = node.pairs.filter((each) => each !== pair).map(({ key }) => key.text);
    place = inMap({ text, at, path, part }, pair, beside.filter(Boolean));
  } else {
    const item = node.items[index] ?? null;
    if (within(item)) return placeInFlow(text, item, marks, [...path, index], at);
    place = inList({ text, at, path: [...path, index], part }, item, node.items);
  }
  return place && isWritable(text, place, at) ? place : null;
}

interface Site {
  readonly text: string;
  readonly at: number;
  readonly path: Path;
  /** From behind a comma or bracket to the next. */
  readonly part: Span;
}

function inMap(site: Site, pair: Pair | null, beside: readonly string[]): FlowPlace | null {
  const { text, at, path, part } = site;
  const colon = pair ? colonOf(text, pair) : -1;
  const key = pair && pair.key.span.end > pair.key.span.start ? pair.key : null;
  if (colon >= 0 && at > colon) {
    const name = key?.text ?? '';
    return name === '' ? null : inValue(site, colon + 1, pair?.value ?? null, [...path, name], []);
  }
  if (key && at > key.span.end) return null;
  if (key && at >= key.span.start)
    return {
      path,
      slot: 'key',
      beside,
      from: key.span.start,
      to: key.span.end,
      ...(colon >= 0 && { colonEnd: colon + 1 }),
      before: key.span.start === part.start ? ' ' : '',
      after: text[Math.max(key.span.end, colon + 1)] === '}' ? ' ' : '',
      pair: colon < 0 ? 'word' : pair?.value ? 'value' : 'colon',
    };
  return {
    path,
    slot: 'key',
    beside: [...beside, ...(key ? [key.text] : [])],
    from: at,
    to: at,
    before: at === part.start ? ' ' : '',
    after: pair ? commaAt(text, at) : text[at] === '}' ? ' ' : '',
  };
}

const commaAt = (text: string, at: number): string => (text[at] === ' ' ? ',' : ', ');

function inList(site: Site, item: Node | null, items: SeqNode['items']): FlowPlace | null {
  const { text, at, path, part } = site;
  const others = items.filter((each) => each !== item || each === null);
  if (item?.kind === 'scalar' && at >= item.span.start)
    return inValue(site, part.start, item, path, namesOf(others));
  if (item && at > item.span.start) return null;
  return {
    path,
    slot: 'value',
    beside: namesOf(items),
    from: at,
    to: at,
    before: at === part.start && text[at - 1] === ',' ? ' ' : '',
    after: item ? commaAt(text, at) : '',
  };
}

const namesOf = (items: SeqNode['items']): string[] =>
  items.flatMap((item) => (item?.kind === 'scalar' && item.text !== '' ? [item.text] : []));

function inValue(
  { text, at }: Site,
  start: number,
  value: Node | null,
  path: Path,
  beside: readonly string[],
): FlowPlace | null {
  if (value && value.kind !== 'scalar') return null;
  const from = value ? Math.min(at, value.span.start) : at;
  const to = value ? Math.max(at, value.span.end) : at;
  const before = from === start && text[start - 1] !== '[' ? ' ' : '';
  return { path, slot: 'value', beside, from, to, before, after: text[to] === '}' ? ' ' : '' };
}

/** Not over lines, nor in a comment. */
function isWritable(text: string, { from, to }: FlowPlace, at: number): boolean {
  const line = /[^\r\n]*$/.exec(text.slice(0, at))![0];
  const isComment = /(^|\s)#/.test(line.slice(Math.max(0, line.search(/[[{]/))));
  return !isComment && !/[\r\n]/.test(text.slice(from, to));
}
