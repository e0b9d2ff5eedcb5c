import { message } from '../words/message.ts';
import { type Load, payloadRule } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';

export const headOverloaded: PlanRule<Load> = {
  name: 'head-overloaded',
  ...payloadRule('head', ({ massKg }) => massKg),
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
  words: ({ name, massKg, payloadKg }, say) => ({
    what:
      massKg > payloadKg
        ? message`The rig weighs ${say.kilograms(massKg)}; ${name} is rated for ${say.kilograms(payloadKg)}.`
        : message`The rig is ${say.percent(massKg / payloadKg)} of the payload of ${name}.`,
    why: message`Above its payload a head slips; close to it, it creeps and shakes.`,
  }),
};
