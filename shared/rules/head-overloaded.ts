import { message } from '../words/message.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Above this fraction of its payload a head creeps and shakes. Common practice. */
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
    when: 'the rig weighs more than the payload of the head; a note above 70% of it.',
    why: 'Above its payload a head slips during the take. Close to it, the head creeps and shakes at high magnification.',
    remedy: 'Use a head with a higher payload, or lighten the rig.',
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
        ? message`The rig weighs ${say.kilograms(massKg)}; ${name} is rated for ${say.kilograms(payloadKg)}.`
        : message`The rig is ${say.percent(massKg / payloadKg)} of the payload of ${name}.`,
    why: message`Above its payload a head slips; close to it, it creeps and shakes.`,
  }),
  size: ({ massKg, payloadKg }) => ({ kind: 'mass', value: massKg - payloadKg }),
  numbers: ({ massKg, payloadKg }) => ({ massKg, payloadKg }),
};
