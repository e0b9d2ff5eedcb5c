import { message } from '../words/message.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Over this share of its payload a head creeps and shakes. Common practice. */
const UNEASY = 0.7;

interface Facts {
  readonly name: string;
  readonly massKg: number;
  readonly payloadKg: number;
}

export const headOverloaded: PlanRule<Facts> = {
  name: 'head-overloaded',
  severity: 'error',
  docs: {
    when: 'the rig weighs more than the head may carry; a note over 70 % of it.',
    why: 'A head past its payload slips while the take runs; near it, it creeps and shakes at high magnification. Common practice: a head just tight enough to move without shaking.',
    remedy: 'Take a stronger head, or leave parts of the rig away.',
    bad: [
      {
        says: 'a small head under it',
        change: {
          'kit/heads': '\n    small-head: { payload: 1 kg, mass: 0.3 kg }',
          'rigs/bench/support': '{ head: small-head }',
        },
      },
    ],
    good: [
      {
        says: 'a head for twice the load',
        change: {
          'kit/heads': '\n    good-head: { payload: 5 kg, mass: 0.9 kg }',
          'rigs/bench/support': '{ head: good-head }',
        },
      },
    ],
  },
  check({ carried }) {
    return worstOf(carried, ({ massKg }) => massKg).flatMap(
      ({ head, massKg }): Observation<Facts>[] => {
        if (!head || head.payloadKg === null || massKg === null) return [];
        const share = massKg / head.payloadKg;
        if (share <= UNEASY) return [];
        return [
          {
            at: head.at,
            severity: share > 1 ? 'error' : 'note',
            facts: { name: head.name, massKg, payloadKg: head.payloadKg },
          },
        ];
      },
    );
  },
  words: ({ name, massKg, payloadKg }, say) => ({
    what:
      massKg > payloadKg
        ? message`${name} may carry ${say.kilograms(payloadKg)}; the rig weighs ${say.kilograms(massKg)}.`
        : message`The rig takes ${say.percent(massKg / payloadKg)} of what ${name} may carry.`,
    why: message`Past its payload a head slips; near it, it creeps and shakes.`,
  }),
  size: ({ massKg, payloadKg }) => ({ kind: 'mass', value: massKg - payloadKg }),
  numbers: ({ massKg, payloadKg }) => ({ massKg, payloadKg }),
};
