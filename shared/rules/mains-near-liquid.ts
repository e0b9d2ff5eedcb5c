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
    when: 'a light on mains lights a liquid subject.',
    why: 'Liquid finds its way along leads. Usual cautions: leads and plugs higher than the liquid or with a drip loop, a residual-current device, supplies off the table, dry hands.',
    remedy:
      'Prefer low voltage or a battery near liquid. Follow your local rules and the word of a qualified person.',
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
    what: message`${light} is on mains, near the liquid of ${subject}: keep leads clear of it.`,
    why: message`Drip loops, a residual-current device, supplies off the table. ${deferring()}`,
  }),
};
