import { message } from '../words/message.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

/** Common practice: from 90 on a light counts as good enough for pictures, by either index. */
const GOOD = 90;

interface Facts {
  readonly light: string;
  readonly index: 'cri' | 'tlci';
  readonly value: number;
}

export const colourRenderingLow: PlanRule<Facts> = {
  name: 'colour-rendering-low',
  severity: 'note',
  docs: {
    when: 'a light of a shot has a `cri` or `tlci` below 90.',
    why: 'Such a light leaves out parts of the spectrum, so that colours come out dull or shifted and no white balance restores them. CRI (CIE 13.3) counts for the eye, TLCI (EBU Tech 3355) for a camera. A limit of 90 is common practice.',
    remedy: 'Use another light, or film a colour chart and expect to grade the shot.',
    bad: [{ says: 'a lamp for a corridor', change: { 'lights/panel/cri': '80' } }],
    good: [{ says: 'a lamp for pictures', change: { 'lights/panel/cri': '95' } }],
  },
  check: ({ shots }) =>
    oncePerPlace(
      shots.flatMap(({ rendering }) =>
        rendering
          .filter(({ value }) => value < GOOD)
          .map(({ at, light, index, value }) => ({ at, facts: { light, index, value } })),
      ),
    ),
  words: ({ light, index, value }) => ({
    what:
      index === 'cri'
        ? message`\`${light}\` has a CRI of ${value}; ${GOOD} is usual for pictures.`
        : message`\`${light}\` has a TLCI of ${value}; ${GOOD} is usual for pictures.`,
    why: message`Colours may come out dull or shifted, and white balance doesn't restore them.`,
  }),
  numbers: ({ index, value }) => ({ [index]: value, good: GOOD }),
};
