import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly light: string;
  readonly subject: string;
}

export const mainsNearLiquid: PlanRule<Facts> = {
  name: 'mains-near-liquid',
  severity: 'note',
  docs: {
    when: 'a mains-powered light is used on a liquid subject.',
    why: 'Liquid runs along cables. Keep cables and plugs above the liquid or form a drip loop, and use an RCD (GFCI). Keep power supplies off the table and your hands dry.',
    remedy:
      'Use low voltage or a battery near liquid. Follow local rules and the advice of a qualified person.',
    bad: [
      {
        says: 'a mains lamp on a film',
        change: { 'lights/strip/supply': 'mains', 'preflight/once/mains-clear-of-liquid': 'open' },
      },
    ],
    good: [{ says: 'low voltage', change: { 'lights/strip/supply': 'low-voltage' } }],
  },
  check({ shots }) {
    const lights = shots.flatMap(({ care }) => care.filter((one) => one.mainsNearLiquid));
    return oncePerPlace(lights).map(({ at, light, subject }) => ({
      at,
      facts: { light, subject },
    }));
  },
  words: ({ light, subject }) => ({
    what: message`${light} is on mains near the liquid of ${subject}: keep its cables away from it.`,
    why: message`Use drip loops and an RCD (GFCI), and keep power supplies off the table. ${deferring()}`,
  }),
};
