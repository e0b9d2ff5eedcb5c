/** A kind whose text is of one of several kinds, told apart by the unit: `2 mm/s` or `3 deg/s`. */
import { readOrDiagnose } from './diagnose.ts';
import type { QuantityKind } from './kind.ts';

type Kinds = Readonly<Record<string, QuantityKind<unknown>>>;
type ValueOf<K> = K extends QuantityKind<infer T> ? T : never;

/** Which of the kinds it is, and the value in it. */
export type Either<K extends Kinds> = {
  [Id in keyof K & string]: { readonly kind: Id; readonly value: ValueOf<K[Id]> };
}[keyof K & string];

interface EitherSpec {
  readonly id: string;
  readonly title: string;
  readonly examples: readonly string[];
  /** Units likely meant by a bare number. */
  readonly likelyUnits: readonly string[];
}

export function eitherKind<K extends Kinds>(spec: EitherSpec, kinds: K): QuantityKind<Either<K>> {
  const members = Object.entries(kinds);
  const units = members.flatMap(([, kind]) => kind.units);
  const member = (value: Either<K>): QuantityKind<unknown> => kinds[value.kind]!;

  function read(text: string): { value: Either<K>; usual: string } | undefined {
    for (const [id, kind] of members) {
      const parsed = kind.parse(text);
      if (parsed.ok) {
        return {
          value: { kind: id, value: parsed.value } as Either<K>,
          usual: parsed.usual ?? text,
        };
      }
    }
    return undefined;
  }

  return {
    id: spec.id,
    title: spec.title,
    units,
    pattern: `^(?:${members.map(([, kind]) => kind.pattern.slice(1, -1)).join('|')})$`,
    words: [],
    examples: spec.examples,
    parse: (text) =>
      readOrDiagnose(text, read, { units, likelyUnits: () => spec.likelyUnits, words: [] }),
    print: (value, as) => member(value).print(value.value, as),
  };
}
