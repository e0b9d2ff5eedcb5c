import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { worstOf } from './loads.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Over this share of its payload a stand bends and rings. Common practice. */
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
    when: 'rig and head weigh more than the stand may carry; a note over 70 % of it.',
    why: 'What a stand may carry is its maker’s word; past it, it can give way.',
    remedy: 'Take a stronger stand. Your local rules and the word of a qualified person decide.',
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
        ? message`${name} may carry ${say.kilograms(payloadKg)}; rig and head weigh ${say.kilograms(massKg)}.`
        : message`Rig and head take ${say.percent(massKg / payloadKg)} of what ${name} may carry.`,
    ...(massKg > payloadKg && { why: deferring() }),
  }),
  size: ({ massKg, payloadKg }) => ({ kind: 'mass', value: massKg - payloadKg }),
  numbers: ({ massKg, payloadKg }) => ({ massKg, payloadKg }),
};
