/**
 * A body as its bench shows it to be: by how much its pictures are brighter than its ISO setting
 * says. A frame that was found 0.3 stops under came out 0.3 stops darker than the plan calculates, so
 * the body works at an ISO lower by that: its offset is −0.3.
 */
import { ISO_OFFSET_STOPS, TEST_FRAME_STOPS } from '../assumptions/bench-beliefs.ts';
import { ifKnown } from '../plan/field.ts';
import type { Body } from '../plan/generated/types.ts';
import { type EntryBench, NOTHING, rowsOf, sigmaIn } from './entry-bench.ts';
import { remembered } from './remembered.ts';

/** What the rows say of the offset, stops; undefined: it has none. */
export const bodyBench = remembered(({ bench }: Body): EntryBench | undefined => {
  const rows = ifKnown(bench) ?? [];
  if (rows.length === 0) return undefined;
  return {
    beliefs: [{ middle: 0, sigma: ISO_OFFSET_STOPS / 2 }],
    ...rowsOf(rows, ({ value: { found, set } }, row) => {
      if (found.state !== 'known' || set.state !== 'known') return NOTHING;
      const datum = {
        value: found.value,
        sigma: sigmaIn(found, TEST_FRAME_STOPS),
        predict: ([offset]: readonly number[]) => offset!,
      };
      return {
        values: [{ row, key: 'found', at: found.at, datum, written: (value) => value }],
        gaps: [],
      };
    }),
  };
});
