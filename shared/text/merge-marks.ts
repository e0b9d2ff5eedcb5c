/**
 * Markers of an unfinished merge inside an entry. Nobody knows which of the two versions is meant,
 * so only the keys between the markers are read, and no values. The rest of the entry is read. A
 * value that the markers cut in two is in doubt as a whole.
 */
import { isFlowOpen } from '../syntax/flow.ts';
import { closingQuote, isEmptyValue, keyAt } from '../syntax/keys.ts';
import { type ContentLine, contentLines, indentAt, type Line } from '../syntax/lines.ts';
import { span } from '../syntax/nodes.ts';
import type { Problems } from './problems.ts';

type MarkKind = 'opens' | 'divides' | 'closes';

const KINDS: ReadonlyMap<string, MarkKind> = new Map([
  ['<', 'opens'],
  ['|', 'divides'],
  ['=', 'divides'],
  ['>', 'closes'],
]);

/** Seven of a kind; more where a merge of merges, or a setting, makes them longer. */
const LEAST = 7;

/** What the line at `at` is, null where it is no mark. */
export function markKind(text: string, at: number, end: number): MarkKind | null {
  const mark = text[at] as string;
  const kind = KINDS.get(mark);
  if (kind === undefined || at >= end) return null;
  let stop = at;
  while (stop < end && text[stop] === mark) stop++;
  if (stop - at < LEAST) return null;
  return stop >= end || ' \t'.includes(text[stop] as string) ? kind : null;
}

export const opensMerge = (text: string, { start, end }: Line): boolean =>
  markKind(text, start, end) === 'opens';

export const closesMerge = (text: string, { start, end }: Line): boolean =>
  markKind(text, start, end) === 'closes';

interface Mark {
  readonly kind: MarkKind;
  readonly line: Line;
}

/** The text, every offset kept, with blanks for what is in doubt. */
export function readMergeMarks(text: string, problems: Problems): string {
  if (!/<{7}|\|{7}|={7}|>{7}/.test(text)) return text;
  const marks = marksIn(text);
  if (marks.length === 0) return text;
  const partners = closingMarks(marks);
  const reading = new Reading(text, problems);
  for (let index = 0; index < marks.length; ) {
    const last = partners[index];
    const { line } = marks[index] as Mark;
    if (last === undefined) {
      reading.lone(line);
      index++;
    } else {
      reading.merge(line, marks[last]?.line ?? null);
      index = last + 1;
    }
  }
  return reading.done();
}

function marksIn(text: string): Mark[] {
  return [...contentLines(text, 0, text.length)].flatMap((line) => {
    const kind = markKind(text, line.start, line.end);
    return kind ? [{ kind, line }] : [];
  });
}

/**
 * For each mark that begins a merge the index of the one that closes it, past the last where none
 * does; undefined for marks that stand alone. A divider begins one whose first mark is gone already.
 */
function closingMarks(marks: readonly Mark[]): (number | undefined)[] {
  const lastClose = marks.findLastIndex(({ kind }) => kind === 'closes');
  const found: (number | undefined)[] = marks.map(() => undefined);
  for (let index = marks.length - 1; index >= 0; index--) {
    if (marks[index]?.kind !== 'divides') continue;
    found[index] = marks[index + 1]?.kind === 'closes' ? index + 1 : undefined;
    if (marks[index + 1]?.kind === 'divides') found[index] = found[index + 1];
  }
  for (let index = 0; index < marks.length; index++) {
    if (marks[index]?.kind !== 'opens') continue;
    let depth = 0;
    let last = index;
    for (; last < marks.length; last++) {
      const { kind } = marks[last] as Mark;
      if (kind === 'opens') depth++;
      // Where marks were lost, the last that closes ends them all.
      if (kind === 'closes' && (--depth === 0 || last === lastClose)) break;
    }
    found[index] = last;
    index = last;
  }
  return found;
}

/** A key, or a dash, with its value on the same line. */
interface Holder {
  readonly indent: number;
  readonly start: number;
  /** Where the value starts. */
  readonly value: number;
}

class Reading {
  readonly #text: string;
  readonly #problems: Problems;
  readonly #parts: string[] = [];
  #kept = 0;
  /** The last key before `#seen` that has a value on its line. */
  #holder: Holder | null = null;
  #seen = 0;

  constructor(text: string, problems: Problems) {
    this.#text = text;
    this.#problems = problems;
  }

  done(): string {
    return this.#parts.join('') + this.#text.slice(this.#kept);
  }

  /** A mark whose partners are gone: both versions may have been merged, or none. */
  lone({ start, end }: Line): void {
    this.#look(start);
    this.#seen = end;
    const text = this.#text;
    const place = span(start, start + text.slice(start, end).trimEnd().length);
    const mark = text.slice(start, start + LEAST);
    this.#problems.syntax('conflict-marker', place, { text: mark });
    this.#blank(start, end);
  }

  /** From the mark on `first` to the one on `last`, or where that is missing to the text's end. */
  merge(first: Line, last: Line | null): void {
    const text = this.#text;
    this.#look(first.start);
    const stop = last?.start ?? text.length;
    const end = last?.end ?? Math.max(first.start, text.trimEnd().length);
    const inner = [...contentLines(text, first.next, stop)].filter(
      (line) => !markKind(text, line.start, line.end),
    );
    const outermost = inner.reduce(
      (least, { indent }) => Math.min(least, indent),
      Number.POSITIVE_INFINITY,
    );
    const holder = this.#cutBy(first.start, outermost);
    const doubt = holder && span(holder.start, this.#valueEnd(last?.next ?? text.length, holder));
    this.#problems.add({
      rule: 'syntax',
      code: 'unfinished-merge',
      at: span(first.start, end),
      args: {},
      fixes: [],
      ...(doubt && { doubt }),
    });
    if (holder) this.#blank(Math.max(holder.value, this.#kept), first.start);
    const column = holder ? Math.min(outermost, holder.indent) : outermost;
    this.#keysOnly(first.start, stop, inner, column);
    this.#blank(stop, Math.max(last?.end ?? stop, doubt?.end ?? 0));
    this.#seen = this.#kept;
  }

  #blank(from: number, to: number): void {
    this.#parts.push(
      this.#text.slice(this.#kept, from),
      this.#text.slice(from, to).replace(/[^\r\n]/g, ' '),
    );
    this.#kept = to;
  }

  /** Of each key and item in column `outermost` its beginning, once. */
  #keysOnly(from: number, to: number, inner: readonly ContentLine[], outermost: number): void {
    const text = this.#text;
    const seen = new Set<string>();
    let at = from;
    for (const { at: start, end, indent } of inner) {
      if (indent !== outermost) continue;
      const shape = keyAt(text, start, end);
      const isItem = text[start] === '-' && /[ \t]/.test(text[start + 1] ?? ' ');
      const key = shape?.key ?? (isItem ? '-' : undefined);
      if (key === undefined || seen.has(key)) continue;
      seen.add(key);
      this.#blank(at, start);
      at = shape ? shape.colon + 1 : start + 1;
    }
    this.#blank(at, to);
  }

  /** Whose value the merge at `at`, with text from column `outermost` on, stands in. */
  #cutBy(at: number, outermost: number): Holder | null {
    const holder = this.#holder;
    if (!holder) return null;
    const isBelow = outermost > holder.indent && outermost < Number.POSITIVE_INFINITY;
    return isBelow || isOpenUntil(this.#text, holder.value, at) ? holder : null;
  }

  /** Where the rest of a value behind a merge ends: before the next key in its column or left of it. */
  #valueEnd(from: number, { indent }: Holder): number {
    const text = this.#text;
    for (const line of contentLines(text, from, text.length))
      if (line.indent <= indent && !'}]'.includes(text[line.at] as string)) return line.start;
    return text.length;
  }

  /** Looks for keys with values on the lines up to `to`. */
  #look(to: number): void {
    const text = this.#text;
    for (const { start, end, at: first } of contentLines(text, this.#seen, to)) {
      let at = first;
      while (at < end && text[at] === '-' && text[at + 1] === ' ') {
        this.#holder = { indent: at - start, start: at, value: at + 1 };
        at += 2 + indentAt(text, at + 2, end);
      }
      const shape = keyAt(text, at, end);
      if (shape)
        this.#holder = isEmptyValue(text, shape.colon + 1, end)
          ? null
          : { indent: at - start, start: shape.start, value: shape.colon + 1 };
    }
  }
}

/** Whether brackets or a quote that open at the start of a value are still open at `to`. */
function isOpenUntil(text: string, from: number, to: number): boolean {
  let at = from;
  while (text[at] === ' ' || text[at] === '\t') at++;
  const first = text[at];
  if (first === '"' || first === "'") return closingQuote(text, at, to) < 0;
  if (first !== '{' && first !== '[') return false;
  return isFlowOpen(text, at, to);
}
