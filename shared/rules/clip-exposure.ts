import type { Sight } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly sight: Extract<Sight, { of: 'exposure' }>;
}

export const clipExposure: RuleCore<Facts> = {
  name: 'clip-exposure',
  severity: 'warning',
  onRequest: true,
  docs: {
    when: 'more than 1% of the picture of a clip is at reference white, or more than 60% at black. The median of all frames counts. Only a check that looks at the pictures finds this.',
    why: 'Reference white and black are codes 235 and 16 by ITU-R BT.709. Detail beyond them is lost in display, and where the camera clipped it, in the edit too. The finding names the exposure error that the plan expects.',
    remedy:
      'Compare with the exposure in the plan, and check light, ND and ISO on set. Accept it where a highlight or a black ground is meant to have no detail.',
    bad: [],
    good: [],
  },
  words({ file, sight: { clipped, crushed, exposureErrorStops } }, say) {
    const isClipped = clipped > 0.01;
    return {
      what: isClipped
        ? message`${file}: ${say.percent(clipped)} of the picture is clipped.`
        : message`${file}: ${say.percent(crushed)} of the picture is black.`,
      ...(exposureErrorStops !== null && {
        why: message`The plan expects ${say.stopsSigned(exposureErrorStops)}.`,
      }),
    };
  },
  numbers: ({ sight: { clipped, crushed, exposureErrorStops } }) => ({
    clipped,
    crushed,
    ...(exposureErrorStops !== null && { exposureErrorStops }),
  }),
};
