/** What is wrong with the bench of a lens: rows that can't be used, and values that don't fit. */
import { misfits, type Reading, saysSomething } from '../lens-fit/fit.ts';
import type { Lens } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { beliefsOf, bodyOf, hasBench, keptOfLens } from './fitted-lens.ts';
import { type BenchGap, type BenchKey, type BenchValue, benchRows } from './lens-bench.ts';
import type { Finder, Named } from './named.ts';

/** A value of a row that is far from what the sheet and the other rows say. */
export interface BenchMisfit {
  readonly row: number;
  readonly key: BenchKey;
  readonly at: Place;
  readonly measured: number;
  readonly expected: number;
}

export interface BenchReport {
  readonly lens: string;
  readonly gaps: readonly BenchGap[];
  readonly misfits: readonly BenchMisfit[];
}

const keptMisfits = keptOfLens(misfits);

/** undefined: the lens has no bench. */
export function benchReport(finder: Finder, lens: Named<Lens>): BenchReport | undefined {
  if (!hasBench(lens.fields)) return undefined;
  const { values, gaps } = benchRows(finder, lens);
  const beliefs = beliefsOf(lens.fields, bodyOf(finder, lens.fields));
  if (!beliefs) return { lens: lens.name, gaps, misfits: [] };
  const says = (value: BenchValue): boolean => saysSomething(beliefs, value.reading);
  const used = values.filter(says);
  const idle = values
    .filter((value) => !says(value))
    .map(({ row, at }) => ({ row, at, because: message`nothing is in focus in this setup` }));
  const found = keptMisfits(
    lens.fields,
    beliefs,
    used.map(({ reading }): Reading => reading),
  );
  return {
    lens: lens.name,
    gaps: [...gaps, ...idle],
    misfits: found.map(({ index, expected }) => misfitOf(used[index]!, expected)),
  };
}

function misfitOf({ row, key, at, value, marked }: BenchValue, expected: number): BenchMisfit {
  const said = marked === undefined ? expected : marked * 2 ** (expected / 2);
  return { row, key, at, measured: value, expected: said };
}
