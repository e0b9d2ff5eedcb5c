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
    when: 'a lamp that gets hot stands nearer than 500 mm to the subject.',
    why: 'It dries and heats what it lights, stirs the air a film stands in, and burns hands and cloth. Usual cautions: gloves, nothing that burns near it, off between takes, cooled before it is moved.',
    remedy:
      'Move it off, or take a cool light. Follow your local rules and the word of a qualified person.',
    bad: [
      {
        says: 'a bulb close to the plate',
        change: { 'shots/frost/light': '[bulb]', 'lights/bulb/at/distance': '300 mm' },
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
    what: message`${light}${watts === null ? '' : ` (${say.number(watts)} W)`} gets hot ${say.length(distanceMm)} from the subject.`,
    why: message`It dries and heats what it lights; let it cool before it is moved. ${deferring()}`,
  }),
  numbers: ({ distanceMm }) => ({ distanceMm }),
};
