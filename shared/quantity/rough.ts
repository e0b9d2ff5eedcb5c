/**
 * What is known only roughly: `50 to 80 mm`, `100 ± 2 mm`, `0.3 stops ± 0.1 stops`, `400 mm ± 5 %`.
 * The value is the middle. Numbers are written plainly here, without exponents.
 */
import { anchored, GAP, readNumber, shortest } from './number.ts';
import { inward, outward, spellings, type Unit, unitOf, unitsPattern } from './unit.ts';

/** The two ends of what somebody knows only roughly. */
export interface Ends<T> {
  readonly low: T;
  readonly high: T;
}

type RoughParsed<T> =
  | {
      readonly ok: true;
      readonly value: T;
      readonly range: Ends<T>;
      /** The usual spelling, only where the text isn't it. */
      readonly usual?: string;
    }
  | {
      readonly ok: false;
      /** It reaches where no such quantity is. */
      readonly code: 'out-of-range';
    };

export interface RoughForm<T> {
  /** Source of an anchored regular expression that matches every text which `parse` doesn't pass over. */
  readonly pattern: string;
  readonly examples: readonly string[];
  /** Undefined: the text is no range. Never throws. */
  parse(text: string): RoughParsed<T> | undefined;
  /** As a range in the unit `as`, one of the kind's own. */
  print(range: Ends<T>, as?: string): string;
}

interface RoughSpec {
  readonly sign: 'positive' | 'zero-up' | 'any';
  /** Empty: a number without a unit. */
  readonly units: readonly Unit[];
  /** The greatest value there is, of either sign. */
  readonly most?: number;
}

/** Nobody knows roughly what takes more digits than these. */
const PLAIN = '(?:0|[1-9][0-9]{0,8})(?:\\.[0-9]{1,9})?';
const PLUS_MINUS = `${GAP}(?:\u00b1|\\+/-|\\+-)${GAP}`;
const TO = `${GAP}(?:to|-|\u2013|\\.\\.)${GAP}`;
const NONE: Unit = { usual: '' };

interface Written {
  readonly low: number;
  readonly high: number;
  readonly usual: string;
}

const PLAINLY = new RegExp(`^-?${PLAIN}$`, 'u');

/** Whether a plain number says it, to what values are told apart by. */
function isPlainly(value: number): boolean {
  const text = shortest(value);
  return PLAINLY.test(text) && Math.abs(Number(text) - value) <= 1e-9 * Math.abs(value);
}

function exampleOf(units: readonly Unit[], own: Unit, most: number | undefined): string {
  if (units.length === 0) return '0.8 to 1';
  const [low, high] = most !== undefined && outward(most, own) < 110 ? [40, 60] : [90, 110];
  return `${low} to ${high}${own.tight ? '' : ' '}${own.usual}`;
}

/** The form of a kind whose values are one number and one unit of these. */
export function roughForm<T extends number>({ sign, units, most }: RoughSpec): RoughForm<T> {
  const number = sign === 'any' ? `[-\u2212+]?${PLAIN}` : PLAIN;
  const own = units[0] ?? NONE;
  const unit = units.length > 0 ? `(${unitsPattern(units)})` : '()';
  const maybe = units.length > 0 ? `${unit}?` : unit;
  const bodies = [
    `(${number})${GAP}${maybe}${TO}(${number})${GAP}${unit}`,
    `(${number})${GAP}${maybe}${PLUS_MINUS}(${PLAIN})${GAP}${unit}`,
    `(${number})${GAP}${unit}${PLUS_MINUS}(${PLAIN})${GAP}%`,
  ];
  // A share of a percentage would read like the percentage itself.
  const forms = spellings(units).includes('%') ? bodies.slice(0, 2) : bodies;
  const readers = forms.map((body) => ({ body, made: undefined as RegExp | undefined }));
  const least = sign === 'any' ? Number.NEGATIVE_INFINITY : 0;
  const greatest = most === undefined ? Number.POSITIVE_INFINITY : most * (1 + 1e-12);

  const write = (text: string, of: Unit): string =>
    of.usual === '' ? text : `${text}${of.tight ? '' : ' '}${of.usual}`;
  const both = (low: string, high: string, of: Unit): string => `${low} to ${write(high, of)}`;

  /** Two numbers in the unit of the second; in one unit each where the first has no plain number there. */
  const joined = (a: number, first: Unit, mark: string, b: number, last: Unit): string => {
    const inLast = first === last ? a : outward(inward(a, first), last);
    const front = isPlainly(inLast) ? shortest(inLast) : write(shortest(a), first);
    return `${front} ${mark} ${write(shortest(b), last)}`;
  };
  const range = (a: string, first: Unit, b: string, last: Unit): Written => {
    const [from, to] = [readNumber(a), readNumber(b)];
    const [start, end] = [inward(from, first), inward(to, last)];
    // Whichever was written first, the lesser is the low end.
    return start <= end
      ? { low: start, high: end, usual: joined(from, first, 'to', to, last) }
      : { low: end, high: start, usual: joined(to, last, 'to', from, first) };
  };
  const about = (a: string, first: Unit, b: string, last: Unit): Written => {
    const [middle, by] = [inward(readNumber(a), first), inward(readNumber(b), last)];
    const usual = joined(readNumber(a), first, '\u00b1', readNumber(b), last);
    return { low: middle - by, high: middle + by, usual };
  };
  const share = (a: string, first: Unit, percent: string): Written => {
    const middle = inward(readNumber(a), first);
    const by = Math.abs(middle) * (readNumber(percent) / 100);
    const usual = `${write(shortest(readNumber(a)), first)} \u00b1 ${shortest(readNumber(percent))} %`;
    return { low: middle - by, high: middle + by, usual };
  };

  function read(text: string): Written | undefined {
    for (const [index, reader] of readers.entries()) {
      reader.made ??= new RegExp(anchored(reader.body), 'u');
      const match = reader.made.exec(text);
      if (!match) continue;
      const [, a = '', written, b = '', second] = match;
      const last = (second ? unitOf(units, second) : undefined) ?? own;
      const first = (written ? unitOf(units, written) : undefined) ?? last;
      if (index === 0) return range(a, first, b, last);
      if (index === 1) return about(a, first, b, last);
      return share(a, first, b);
    }
    return undefined;
  }

  return {
    pattern: anchored(forms.map((body) => body.replace(/(?<!\\)\((?!\?)/g, '(?:')).join('|')),
    examples: [exampleOf(units, own, most)],
    parse(text) {
      if (!/to|-|\u2013|\.\.|\u00b1/.test(text)) return undefined;
      const found = read(text);
      if (!found) return undefined;
      const { low, high, usual } = found;
      if (low < least || (sign === 'positive' && !(low > 0)) || high > greatest || low < -greatest)
        return { ok: false, code: 'out-of-range' };
      return {
        ok: true,
        value: ((low + high) / 2) as T,
        range: { low: low as T, high: high as T },
        ...(usual !== text && { usual }),
      };
    },
    print({ low, high }, as) {
      const wanted = (as === undefined ? undefined : unitOf(units, as)) ?? own;
      // Nine decimals of a large unit may lose a small value; its own unit doesn't.
      const of = [low, high].every((end) => isPlainly(outward(end, wanted))) ? wanted : own;
      return both(shortest(outward(low, of)), shortest(outward(high, of)), of);
    },
  };
}
