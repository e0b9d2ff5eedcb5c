/** What is wrong with a bench: rows that can't be used, and values that don't fit. */
import { misfits, type Reading, saysSomething } from '../lens-fit/fit.ts';
import { misfitsOf } from '../lens-fit/misfits.ts';
import type { Lens } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { EntryBench, EntryBenchKey } from './entry-bench.ts';
import { entryBench, writtenOf } from './fitted-entry.ts';
import { beliefsOf, bodyOf, hasBench, keptOfLens } from './fitted-lens.ts';
import { type BenchGap, type BenchKey, type BenchValue, benchRows } from './lens-bench.ts';
import type { Finder, Named } from './named.ts';
import { remembered } from './remembered.ts';

/** A value of a row that is far from what the sheet and the other rows say. */
export interface BenchMisfit {
  readonly row: number;
  readonly key: BenchKey | EntryBenchKey;
  readonly at: Place;
  /** Without it nothing would be left of its row. */
  readonly isWholeRow: boolean;
  readonly measured: number;
  readonly expected: number;
}

export interface BenchReport {
  /** The lens, light, body, converter or close-up lens. */
  readonly of: string;
  readonly gaps: readonly BenchGap[];
  readonly misfits: readonly BenchMisfit[];
}

const keptMisfits = keptOfLens(misfits);

/** undefined: the entry has no bench. */
export const benchReport = (finder: Finder, entry: Named<object>): BenchReport | undefined =>
  entry.group === 'lenses'
    ? lensReport(finder, entry as Named<Lens>)
    : entryReport(entry, finder.constants.incident);

function lensReport(finder: Finder, lens: Named<Lens>): BenchReport | undefined {
  if (!hasBench(lens.fields)) return undefined;
  const { values, gaps } = benchRows(finder, lens);
  const beliefs = beliefsOf(lens.fields, bodyOf(finder, lens.fields));
  if (!beliefs) return { of: lens.name, gaps, misfits: [] };
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
    of: lens.name,
    gaps: [...gaps, ...idle],
    misfits: found.map(({ index, expected }) => misfitOf(used[index]!, expected)),
  };
}

function entryReport(entry: Named<object>, incident: number): BenchReport | undefined {
  const bench = entryBench(entry.group, writtenOf(entry), incident);
  if (!bench) return undefined;
  return { of: entry.name, gaps: bench.gaps, misfits: entryMisfits(bench) };
}

const entryMisfits = remembered(({ beliefs, values }: EntryBench): readonly BenchMisfit[] =>
  misfitsOf(
    beliefs,
    values.map(({ datum }) => datum),
  ).map(({ index, expected }) => {
    const { row, key, at, datum, written } = values[index]!;
    return {
      row,
      key,
      at,
      isWholeRow: values.filter((value) => value.row === row).length === 1,
      measured: written(datum.value),
      expected: written(expected),
    };
  }),
);

function misfitOf({ row, key, at, value, marked }: BenchValue, expected: number): BenchMisfit {
  const said = marked === undefined ? expected : marked * 2 ** (expected / 2);
  return { row, key, at, isWholeRow: false, measured: value, expected: said };
}
