import type { Carried } from '../figures/carried.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Farther than this from the foot, the rig tips the head and loads the mounts, mm. */
const FAR_MM = 20;

interface Facts {
  readonly centreMm: number;
  readonly footMm: number;
  readonly rig: string;
}

export const rigPitches: PlanRule<Facts> = {
  name: 'rig-pitches',
  severity: 'note',
  docs: {
    when: 'the centre of gravity of the rig is more than 20 mm from its foot.',
    why: 'A long rig held by its body tips the head when it is loosened, and its weight hangs on the mounts. A lens support takes the load off the mounts.',
    remedy: 'Move the foot under the centre of gravity. Use a lens support for a long rig.',
    bad: [{ says: 'held by the body', change: { 'rigs/bench/support': '{ foot: 10 mm }' } }],
    good: [{ says: 'held where it balances', change: { 'rigs/bench/support': '{ foot: 62 mm }' } }],
  },
  check({ carried }) {
    const off = ({ centreOfGravityMm, footMm }: Carried): number | null =>
      centreOfGravityMm === null || footMm === null ? null : Math.abs(centreOfGravityMm - footMm);
    return worstOf(carried, off).flatMap(
      ({ centreOfGravityMm: centreMm, footMm, rig, at }): Observation<Facts>[] => {
        if (centreMm === null || footMm === null || Math.abs(centreMm - footMm) <= FAR_MM)
          return [];
        return [{ at: below(at, 'foot'), facts: { centreMm, footMm, rig } }];
      },
    );
  },
  words: ({ centreMm, footMm, rig }, say) => ({
    what:
      centreMm > footMm
        ? message`${rig} is front-heavy: its centre of gravity is ${say.length(Math.abs(centreMm - footMm))} ahead of the foot.`
        : message`${rig} is rear-heavy: its centre of gravity is ${say.length(Math.abs(centreMm - footMm))} behind the foot.`,
    why: message`From the sensor plane, the centre of gravity is at ${say.length(centreMm)} and the foot at ${say.length(footMm)}.`,
  }),
  size: ({ centreMm, footMm }) => ({ kind: 'length', value: Math.abs(centreMm - footMm) }),
  numbers: ({ centreMm, footMm }) => ({ centreOfGravityMm: centreMm, footMm }),
  fixes({ at, facts: { centreMm } }) {
    const foot = Math.round(centreMm);
    return [setTo(message`Move the foot to ${foot} mm`, at, `${foot} mm`)];
  },
};
