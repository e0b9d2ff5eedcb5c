import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { judgedLoad, type Load, payloadRule } from './loads.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

const ofRigs = payloadRule('stand', ({ massKg, headMassKg }) => massKg + headMassKg);

export const standOverloaded: PlanRule<Load> = {
  name: 'stand-overloaded',
  ...ofRigs,
  check: (plan) => [
    ...ofRigs.check(plan),
    ...oncePerPlace(plan.shots.flatMap(({ heldLights }) => heldLights)).flatMap(
      ({ at, light, stand: name, massKg, payloadKg }) =>
        payloadKg === null ? [] : judgedLoad(at, { name, massKg, payloadKg, light }),
    ),
  ],
  docs: {
    when: 'rig and head, or a light, weigh more than the payload of the stand; a note above 70% of it.',
    why: 'The maker rates the payload of a stand. Above it, the stand can collapse.',
    remedy:
      'Use a stand with a higher payload. Follow local rules and the advice of a qualified person.',
    bad: [
      {
        says: 'a light stand',
        change: {
          'kit/stands': '\n    thin-stand: { kind: stand, payload: 1 kg }',
          'rigs/bench/support': '{ stand: thin-stand }',
        },
      },
    ],
    good: [
      {
        says: 'a strong one',
        change: {
          'kit/stands': '\n    strong-stand: { kind: stand, payload: 9 kg }',
          'rigs/bench/support': '{ stand: strong-stand }',
        },
      },
    ],
  },
  words: ({ name, massKg, payloadKg, light }, say) => ({
    what: light
      ? massKg > payloadKg
        ? message`${light} weighs ${say.kilograms(massKg)}; ${name} is rated for ${say.kilograms(payloadKg)}.`
        : message`${light} is ${say.percent(massKg / payloadKg)} of the payload of ${name}.`
      : massKg > payloadKg
        ? message`Rig and head weigh ${say.kilograms(massKg)}; ${name} is rated for ${say.kilograms(payloadKg)}.`
        : message`Rig and head are ${say.percent(massKg / payloadKg)} of the payload of ${name}.`,
    ...(massKg > payloadKg && { why: deferring() }),
  }),
};
