import { backgroundStopsBelow } from '../mirror/exposure.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Background over film from which on colours look washed out. Common practice. */
const WASHED = 1 / 20;
/** Accuracy of the two luminances: 1/6 stop. */
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
    when: 'the background seen through the film is brighter than 1/20 of its reflection.',
    why: 'A film reflects a few per cent of the light and transmits the rest of the background. To stay 20 times below the reflection, the background must be about 9 stops darker than the light. Keep the vessel behind or under the film almost empty and dark.',
    remedy: 'Black out or clear the background, flag light off it, or raise the key light.',
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
        related: () => relatedTo(at, strayRatio),
      },
    ];
  },
  words({ ratio, reflectance, subject }, say) {
    const times =
      ratio < 1
        ? message`1/${say.number(1 / ratio)} as bright as`
        : message`${say.number(ratio)} times as bright as`;
    return {
      what: message`The background is ${times} the reflection of ${subject ?? message`the film`}.`,
      why: message`It washes out the film; keep it below 1/${1 / WASHED}. At a reflectance of ${say.percent(reflectance)} that is ${say.stops(backgroundStopsBelow(reflectance, WASHED))} below the light; reduce it by ${say.stops(Math.log2(ratio / WASHED))}.`,
    };
  },
  size: ({ ratio }) => ({ kind: 'stops', value: Math.log2(ratio / WASHED) }),
  numbers: ({ ratio, reflectance }) => ({ strayRatio: ratio, reflectance }),
};
