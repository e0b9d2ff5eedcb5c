import { backgroundStopsBelow } from '../mirror/exposure.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Background over film from which on colours look washed out. Common practice. */
const WASHED = 1 / 20;
/** What the two luminances are good to, a sixth of a stop. */
const DEAD_BAND = 1.12;

interface Facts {
  readonly ratio: number;
  readonly reflectance: number;
  /** null: not named. */
  readonly subject: string | null;
}

export const backgroundWashes: ShotRule<Facts> = {
  name: 'background-washes',
  severity: 'warning',
  docs: {
    when: 'what shines through the film from behind is more than 1/20 of what the film returns.',
    why: 'A film returns a few per cent of the light and lets the rest of the background through: to stay 20 times below the film, the background has to be about 9 stops darker than the light. Common practice: keep the vessel behind or under the film almost empty and dark.',
    remedy:
      'Blacken or empty what is behind, flag the light off it, or bring the light’s own luminance up.',
    bad: [{ says: 'a lit wall behind', change: { 'shots/skin/background-luminance': '60 cd/m2' } }],
    good: [
      { says: 'a dark vessel behind', change: { 'shots/skin/background-luminance': '0.2 cd/m2' } },
    ],
  },
  check({ bench, figures }) {
    const { strayRatio, reflectance } = figures;
    if (!strayRatio.known || !reflectance.known || strayRatio.value <= WASHED * DEAD_BAND)
      return [];
    const own = bench.fields['background-luminance'];
    const at = own.state === 'missing' ? bench.fields.subject.at : own.at;
    return [
      {
        at,
        facts: {
          ratio: strayRatio.value,
          reflectance: reflectance.value,
          subject: bench.subject?.name ?? null,
        },
        related: relatedTo(at, strayRatio),
      },
    ];
  },
  words({ ratio, reflectance, subject }, say) {
    const times =
      ratio < 1 ? message`1/${say.number(1 / ratio)} of` : message`${say.number(ratio)} times`;
    return {
      what: message`The background shines through: ${times} what ${subject ?? message`the film`} returns.`,
      why: message`At a reflectance of ${say.percent(reflectance)} it should lie ${say.stops(backgroundStopsBelow(reflectance, WASHED))} below the light; it is ${say.stops(Math.log2(ratio / WASHED))} too bright.`,
    };
  },
  size: ({ ratio }) => ({ kind: 'stops', value: Math.log2(ratio / WASHED) }),
  numbers: ({ ratio, reflectance }) => ({ strayRatio: ratio, reflectance }),
};
