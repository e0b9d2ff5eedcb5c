import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Above this fraction of its payload a stand bends and vibrates. Common practice. */
const UNEASY = 0.7;

interface Facts {
  readonly name: string;
  readonly massKg: number;
  readonly payloadKg: number;
}

export const standOverloaded: PlanRule<Facts> = {
  name: 'stand-overloaded',
  severity: 'error',
  docs: {
    when: 'rig and head weigh more than the payload of the stand; a note above 70% of it.',
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
  check({ carried }) {
    return worstOf(carried, ({ massKg }) => massKg).flatMap(
      ({ stand, massKg, headMassKg }): Observation<Facts>[] => {
        if (!stand || stand.payloadKg === null || massKg === null) return [];
        const load = massKg + headMassKg;
        if (load <= stand.payloadKg * UNEASY) return [];
        return [
          {
            at: stand.at,
            severity: load > stand.payloadKg ? 'error' : 'note',
            facts: { name: stand.name, massKg: load, payloadKg: stand.payloadKg },
          },
        ];
      },
    );
  },
  words: ({ name, massKg, payloadKg }, say) => ({
    what:
      massKg > payloadKg
        ? message`Rig and head weigh ${say.kilograms(massKg)}; ${name} is rated for ${say.kilograms(payloadKg)}.`
        : message`Rig and head are ${say.percent(massKg / payloadKg)} of the payload of ${name}.`,
    ...(massKg > payloadKg && { why: deferring() }),
  }),
  size: ({ massKg, payloadKg }) => ({ kind: 'mass', value: massKg - payloadKg }),
  numbers: ({ massKg, payloadKg }) => ({ massKg, payloadKg }),
};
