import type { Carried } from '../figures/carried.ts';
import { message } from '../words/message.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { setTo } from './shot-rule.ts';

/** Further than this from the foot, the rig pitches the head and pulls the mounts, mm. */
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
    when: 'the centre of gravity of the rig lies more than 20 mm from its foot.',
    why: 'A long stack that is held by its body pitches the head when it is loosened, and hangs from the mounts. Common practice: long stacks on a bracket that relieves the mounts, the foot under the centre of gravity.',
    remedy: 'Move the foot under the centre of gravity, on a bracket where the stack is long.',
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
        return [{ at: { ...at, path: [...at.path, 'foot'] }, facts: { centreMm, footMm, rig } }];
      },
    );
  },
  words: ({ centreMm, footMm, rig }, say) => ({
    what:
      centreMm > footMm
        ? message`${rig} balances ${say.length(Math.abs(centreMm - footMm))} before its foot.`
        : message`${rig} balances ${say.length(Math.abs(centreMm - footMm))} behind its foot.`,
    why: message`Its centre of gravity lies ${say.length(centreMm)} from the sensor plane, the foot ${say.length(footMm)}.`,
  }),
  size: ({ centreMm, footMm }) => ({ kind: 'length', value: Math.abs(centreMm - footMm) }),
  numbers: ({ centreMm, footMm }) => ({ centreOfGravityMm: centreMm, footMm }),
  fixes({ at, facts: { centreMm } }) {
    const foot = Math.round(centreMm);
    return [setTo(message`Put the foot at ${foot} mm`, at, `${foot} mm`)];
  },
};
