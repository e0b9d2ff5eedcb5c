import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly light: string;
  readonly distanceMm: number;
  readonly watts: number | null;
}

export const hotLampNearSubject: PlanRule<Facts> = {
  name: 'hot-lamp-near-subject',
  severity: 'note',
  docs: {
    when: 'a hot lamp is closer than 500 mm to the subject.',
    why: 'It heats and dries the subject, stirs the air around a film, and burns hands and cloth. Wear gloves, keep flammable material away, switch it off between takes and let it cool before moving it.',
    remedy:
      'Move it back, or use a cool light. Follow local rules and the advice of a qualified person.',
    bad: [
      {
        says: 'a bulb close to the plate',
        change: {
          'shots/frost/light': '[bulb]',
          'shots/frost/white-balance': '3200 K',
          'lights/bulb/at/distance': '300 mm',
        },
      },
    ],
    good: [{ says: 'a bulb farther off', change: { 'shots/frost/light': '[bulb]' } }],
  },
  check({ shots }) {
    const lights = shots.flatMap(({ care }) => care.filter((one) => one.hot !== null));
    return oncePerPlace(lights).map(({ at, light, hot }) => ({
      at,
      facts: { light, distanceMm: hot!.distanceMm, watts: hot!.watts },
    }));
  },
  words: ({ light, distanceMm, watts }, say) => ({
    what: message`${light}${watts === null ? '' : ` (${say.number(watts)} W)`} is a hot lamp, ${say.length(distanceMm)} from the subject.`,
    why: message`It heats and dries the subject; let it cool before you move it. ${deferring()}`,
  }),
  numbers: ({ distanceMm }) => ({ distanceMm }),
};
