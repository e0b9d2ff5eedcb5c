/**
 * What a change leaves standing of the edit of a film: figures of a cut that are the very objects
 * that they were have not been worked out again.
 */
import { expect, it } from 'vitest';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { planOf } from '../bench/plan-of.ts';
import { PLAN, ROOT } from '../support/plans.ts';

const CUTS = 40;

/** Two cuts of each shot, the second one half an edit behind the first. */
const text = `${planOf(CUTS / 2)}
edit:
  music: { tempo: 100 bpm, bar: 4 beats }
  cuts:
${Array.from({ length: CUTS }, (_, index) => `    cut-${index}: { shot: shot-${index % (CUTS / 2)}, from: 2 s, duration: 2 bars }\n`).join('')}`;

/** Indexes of the cuts of which `part` is another object after a change of a line than before. */
function madeAnew(
  line: string | number,
  change: (line: string) => string,
): (part?: 'track' | 'laid' | 'sourceS' | 'handleAfter') => readonly number[] {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  const before = analysis.edit(PLAN)!.cuts;
  expect(before).toHaveLength(CUTS);
  const lines = text.split('\n');
  const at = typeof line === 'number' ? line : lines.findIndex((each) => each.includes(line));
  const old = lines[at]!;
  expect(change(old)).not.toBe(old);
  store.edit(
    PLAN,
    { start: { line: at, character: 0 }, end: { line: at, character: old.length } },
    change(old),
  );
  const after = analysis.edit(PLAN)!.cuts;
  return (part) =>
    after.flatMap((cut, index) => {
      const was = before[index]!;
      return (part ? cut[part] === was[part] : cut === was) ? [] : [index];
    });
}

const from = (first: number): readonly number[] =>
  Array.from({ length: CUTS - first }, (_, index) => first + index);

/** The cut before waits for how this one begins, and what else their shots show lies beside them. */
const NEIGHBOURS = [6, 7, 26, 27];

it('where a cut begins in its clip: its neighbours, and no place in the film', () => {
  const anew = madeAnew('cut-7:', (line) => line.replace('from: 2 s', 'from: 3 s'));
  expect(anew()).toEqual(NEIGHBOURS);
  expect(anew('track')).toEqual([7]);
  expect(anew('sourceS')).toEqual([7]);
});

it('how long a cut is: its own source, and the places of those behind it', () => {
  const anew = madeAnew('cut-7:', (line) => line.replace('2 bars', '1 bar'));
  expect(anew('sourceS')).toEqual([7]);
  expect(anew('track')).toEqual(from(7));
  expect(anew('laid')).toEqual(NEIGHBOURS);
  expect(anew('handleAfter')).toEqual(NEIGHBOURS);
  expect(anew()).toEqual([6, ...from(7)]);
});

it('a join: its neighbours', () => {
  const anew = madeAnew('cut-7:', (line) =>
    line.replace('2 bars', '2 bars, transition: dissolve 1 beat'),
  );
  expect(anew()).toEqual(NEIGHBOURS);
});

it('how long the takes of a shot are: its cuts and those before them', () => {
  const lines = text.split('\n');
  const take = lines.findIndex(
    (line, at) => at > lines.indexOf('  shot-19:') && /take:/.test(line),
  );
  const anew = madeAnew(take, (line) => line.replace('20 s', '30 s'));
  expect(anew()).toEqual([18, 19, 38, 39]);
  expect(anew('track')).toEqual([19, 39]);
});

it('what else is told of a shot: none', () => {
  expect(madeAnew('Number 19 of many', (line) => `${line}, slowly`)()).toEqual([]);
});

it('the tempo: all that is told in bars', () => {
  const anew = madeAnew('tempo:', (line) => line.replace('100', '120'));
  expect(anew('sourceS')).toEqual(from(0));
});
