/** Contrast in the middle and at the ends of the depth needed, over the apertures of the lens. */

import { expect, it } from 'vitest';
import { contrastTable } from '../../shared/figures/contrast-table.ts';
import { diffractionContrast } from '../../shared/optics/diffraction.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { entryId } from '../support/entry-id.ts';
import { changed, PLAN, ROOT } from '../support/plans.ts';

function rowsOf(change: Readonly<Record<string, string | null>>, shot: string) {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, changed(EXAMPLE_PLAN, change));
  const bench = analysis.bench(PLAN, entryId(`shots/${shot}`))!;
  const figures = analysis.figures(PLAN, entryId(`shots/${shot}`))!;
  return { table: contrastTable(bench, figures), figures };
}

it('narrower, the middle only loses; the ends gain until diffraction takes over', () => {
  const { table, figures } = rowsOf({}, 'frost');
  if (!table.known || !figures.pixelUm.known) throw new Error('not known');
  const middles = table.value.map(({ middle }) => middle);
  expect(middles).toEqual([...middles].sort((a, b) => b - a));
  const ends = table.value.map((row) => row.ends);
  const best = ends.indexOf(Math.max(...ends));
  expect(best).toBeGreaterThan(0);
  expect(best).toBeLessThan(ends.length - 1);
  for (const { middle, ends: end } of table.value) expect(end).toBeLessThanOrEqual(middle);
  // f/16 at 0.6x works as f/25.6; half Nyquist of a pixel of 18.75 µm is 13.3 cycles/mm.
  const at16 = table.value.find(({ marked }) => marked === 16)!;
  expect(at16.middle).toBeCloseTo(diffractionContrast(1000 / (4 * 18.75), 16 * 1.6), 6);
});

it('has the aperture that is set, be it a full stop or not', () => {
  const { table } = rowsOf({ 'shots/frost/aperture': 'f/9' }, 'frost');
  expect(table.known && table.value.map(({ marked }) => marked)).toEqual([
    2.8, 4, 5.6, 8, 9, 11, 16, 22, 32,
  ]);
});

it('needs a depth to have ends', () => {
  const { table } = rowsOf({ 'subjects/frost-plate/depth': '0 mm' }, 'frost');
  expect(table).toMatchObject({ known: false, because: 'no depth is needed' });
});
