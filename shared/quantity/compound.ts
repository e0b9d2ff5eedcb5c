/** Kinds whose text has a form of its own: a reader that gives value and usual spelling. */
import { readOrDiagnose } from './diagnose.ts';
import type { QuantityKind } from './kind.ts';
import { anchored, plainNumber, withoutExponents } from './number.ts';
import type { RoughForm } from './rough.ts';

interface CompoundSpec<T> {
  readonly id: string;
  readonly title: string;
  readonly units: readonly string[];
  /** Unit spellings understood, where they are more than `units`. */
  readonly unitSpellings?: readonly string[];
  readonly examples: readonly string[];
  readonly bare?: 'number' | 'integer';
  readonly words?: readonly string[];
  /** Source without anchors, with the capture groups that `read` takes. */
  readonly body: string;
  /** Total: whatever `body` matches has a value. Numbers among the groups are given plain. */
  read(groups: readonly (string | undefined)[]): { value: T; usual: string };
  readonly likelyUnits?: (value: number) => readonly string[];
  /** false: the digits aren't numbers of their own (a date). */
  readonly numbers?: boolean;
  readonly repairs?: (text: string) => readonly string[];
  print(value: T, as?: string): string;
  readonly rough?: RoughForm<T>;
}

/** The same pattern without capture groups. */
const uncaptured = (source: string): string => source.replace(/(?<!\\)\((?!\?)/g, '(?:');

/** As few texts have it. */
const EXPONENT = /[0-9][eE][-+0-9]/;

const plainly = (group: string | undefined): string | undefined =>
  group === undefined ? undefined : plainNumber(group);

export function compoundKind<T>(spec: CompoundSpec<T>): QuantityKind<T> {
  const usually = new RegExp(anchored(withoutExponents(spec.body)), 'u');
  let made: RegExp | undefined;
  const withExponents = (): RegExp => {
    made ??= new RegExp(anchored(spec.body), 'u');
    return made;
  };
  function read(text: string): { value: T; usual: string } | undefined {
    const match = (EXPONENT.test(text) ? withExponents() : usually).exec(text);
    return match ? spec.read(match.slice(1).map(plainly)) : undefined;
  }
  return {
    id: spec.id,
    title: spec.title,
    units: spec.units,
    pattern: anchored(uncaptured(spec.body)),
    words: spec.words ?? [],
    examples: spec.examples,
    ...(spec.bare ? { bare: spec.bare } : {}),
    ...(spec.rough ? { rough: spec.rough } : {}),
    parse: (text) =>
      readOrDiagnose(text, read, {
        units: spec.unitSpellings ?? spec.units,
        likelyUnits: spec.likelyUnits ?? (() => spec.units),
        words: spec.words ?? [],
        numbers: spec.numbers ?? true,
        ...(spec.repairs ? { repairs: spec.repairs } : {}),
      }),
    print: spec.print,
  };
}
