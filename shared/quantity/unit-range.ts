/** Kinds that reach from one value to another of the same unit: `80 to 700 nm`. */
import type { Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { anchored, GAP, NUMBER, POSITIVE, readNumber, shortest } from './number.ts';
import { inward, outward, spellings, type Unit, unitOf, unitsPattern } from './unit.ts';

interface UnitRangeSpec {
  readonly id: string;
  readonly title: string;
  readonly units: readonly Unit[];
  readonly examples: readonly string[];
  /** One value alone is allowed, and is a range without width. */
  readonly single: boolean;
  /** The lesser value may be 0. */
  readonly fromZero?: boolean;
  readonly likelyUnits?: (value: number) => readonly string[];
}

/** Between the two values; the usual one is ` to `. */
export const TO = `${GAP}(?:to|-|\u2013|\\.\\.)${GAP}`;

/** Relative: what rounding to the last digit written may change. */
const SAME = 1e-6;
const EXACT = 1e-9;

/** `from` is the lesser whichever was written first. */
export function unitRange<T extends number>(spec: UnitRangeSpec): QuantityKind<Range<T>> {
  const own = spec.units[0]!;
  const start = spec.fromZero ? NUMBER : POSITIVE;
  const writable = new RegExp(anchored(start), 'u');
  const unit = `(${unitsPattern(spec.units)})`;
  const phrase = (low: string, high: string, of: Unit): string =>
    low === high && spec.single ? `${high} ${of.usual}` : `${low} to ${high} ${of.usual}`;
  return compoundKind<Range<T>>({
    id: spec.id,
    title: spec.title,
    units: spec.units.map((one) => one.usual),
    unitSpellings: spellings(spec.units),
    examples: spec.examples,
    body: `(?:(${start})${GAP}${unit}?${TO})${spec.single ? '?' : ''}(${POSITIVE})${GAP}${unit}`,
    read([first, firstWritten, second = '', secondWritten = '']) {
      const last = unitOf(spec.units, secondWritten) ?? own;
      const startUnit = (firstWritten ? unitOf(spec.units, firstWritten) : undefined) ?? last;
      const b = inward(readNumber(second), last) as T;
      const a = first === undefined ? b : (inward(readNumber(first), startUnit) as T);
      const firstText = startUnit === last ? (first ?? second) : shortest(outward(a, last));
      // A unit that is much larger may leave too few digits of a small number.
      const again = inward(Number(firstText), last);
      const keeps = writable.test(firstText) && Math.abs(again - a) <= SAME * a;
      if (first !== undefined && !keeps) {
        // No number that could be read again in the other's unit: each keeps its own.
        const ends = [`${first} ${startUnit.usual}`, `${second} ${last.usual}`];
        const [low, high] = a <= b ? ends : ends.reverse();
        return {
          value: a <= b ? { from: a, to: b } : { from: b, to: a },
          usual: `${low} to ${high}`,
        };
      }
      return a <= b
        ? { value: { from: a, to: b }, usual: phrase(firstText, second, last) }
        : { value: { from: b, to: a }, usual: phrase(second, firstText, last) };
    },
    ...(spec.likelyUnits ? { likelyUnits: spec.likelyUnits } : { likelyUnits: () => [own.usual] }),
    print(value, as) {
      const of = (as === undefined ? undefined : unitOf(spec.units, as)) ?? own;
      const isKept = (end: number): boolean =>
        Math.abs(inward(Number(shortest(outward(end, of))), of) - end) <= EXACT * end;
      // A large unit leaves too few digits of a short time.
      const best = !spec.fromZero || (isKept(value.from) && isKept(value.to)) ? of : own;
      return phrase(shortest(outward(value.from, best)), shortest(outward(value.to, best)), best);
    },
  });
}
