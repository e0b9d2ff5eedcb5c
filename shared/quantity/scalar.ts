/** A kind made of one number and one unit: `200 mm`, `5600 K`, `2 stops`. */
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, NUMBER, POSITIVE, readNumber, SIGNED, shortest, usualNumber } from './number.ts';
import { roughForm } from './rough.ts';
import { inward, outward, spellings, type Unit, unitOf, unitsPattern } from './unit.ts';

interface ScalarSpec {
  readonly id: string;
  readonly title: string;
  readonly sign: 'positive' | 'zero-up' | 'any';
  /** The first is the kind's own, used where none is asked for. */
  readonly units: readonly Unit[];
  readonly examples: readonly string[];
  /** Units likely meant by a bare number, best first; the kind's own where left out. */
  readonly likelyUnits?: (value: number) => readonly string[];
}

const SIGNS = { positive: POSITIVE, 'zero-up': NUMBER, any: SIGNED };

export function scalarKind<T extends number>(spec: ScalarSpec): QuantityKind<T> {
  const own = spec.units[0]!;
  const write = (number: string, unit: Unit): string =>
    `${number}${unit.tight ? '' : ' '}${number === '1' ? (unit.one ?? unit.usual) : unit.usual}`;
  return compoundKind<T>({
    rough: roughForm<T>({ sign: spec.sign, units: spec.units }),
    id: spec.id,
    title: spec.title,
    units: spec.units.map((unit) => unit.usual),
    unitSpellings: spellings(spec.units),
    examples: spec.examples,
    body: `(${SIGNS[spec.sign]})${GAP}(${unitsPattern(spec.units)})`,
    read([number = '', written = '']) {
      const unit = unitOf(spec.units, written) ?? own;
      return {
        value: inward(readNumber(number), unit) as T,
        usual: write(usualNumber(number), unit),
      };
    },
    likelyUnits: spec.likelyUnits ?? (() => [own.usual]),
    print(value, as) {
      const wanted = (as === undefined ? undefined : unitOf(spec.units, as)) ?? own;
      const text = shortest(outward(value, wanted));
      // Nine decimals of a large unit may lose a small value; its own unit doesn't.
      const lost = Math.abs(inward(Number(text), wanted) - value) > 1e-9 * Math.abs(value);
      return lost ? write(shortest(outward(value, own)), own) : write(text, wanted);
    },
  });
}
