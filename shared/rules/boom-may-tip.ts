import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** The usual margin against tipping. Common practice; local rules may ask for more. */
const MARGIN = 1.5;

interface Facts {
  readonly factor: number;
  readonly stand: string;
}

export const boomMayTip: PlanRule<Facts> = {
  name: 'boom-may-tip',
  severity: 'warning',
  docs: {
    when: 'what holds a boom down is less than 1.5 times what tips it; an error under 1.',
    why: 'Moments about the edge of the footprint: load times reach against stand and counterweight. A cable that catches or a foot that is not level takes from the margin.',
    remedy:
      'More counterweight, a wider base or a shorter reach; tether the load. Your local rules and the word of a qualified person decide.',
    bad: [
      {
        says: 'too little behind it',
        change: {
          'kit/stands':
            '\n    arm: { kind: boom, footprint: 0.8 m, reach: 1.4 m, mass: 2 kg, counterweight: 1 kg, counterweight-arm: 100 mm }',
          'rigs/bench/support': '{ stand: arm }',
        },
      },
    ],
    good: [
      {
        says: 'enough behind it',
        change: {
          'kit/stands':
            '\n    arm: { kind: boom, footprint: 1.1 m, reach: 1.2 m, mass: 6 kg, counterweight: 4 kg, counterweight-arm: 500 mm }',
          'rigs/bench/support': '{ stand: arm }',
        },
      },
    ],
  },
  check({ carried }) {
    const least = worstOf(carried, ({ stabilityFactor }) =>
      stabilityFactor === null ? null : -stabilityFactor,
    );
    return least.flatMap(({ stabilityFactor: factor, stand }): Observation<Facts>[] => {
      if (factor === null || !stand || factor >= MARGIN) return [];
      return [
        {
          at: stand.at,
          severity: factor < 1 ? 'error' : 'warning',
          facts: { factor, stand: stand.name },
        },
      ];
    });
  },
  words: ({ factor, stand }, say) => ({
    what:
      factor < 1
        ? message`${stand} tips: what holds it is ${say.number(factor)} of what tips it.`
        : message`${stand} may tip: what holds it is ${say.number(factor)} times what tips it.`,
    why: message`At least ${MARGIN} is usual, load tethered. ${deferring()}`,
  }),
  numbers: ({ factor }) => ({ stabilityFactor: factor }),
};
