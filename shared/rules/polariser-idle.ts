import type { PolariserInUse } from '../figures/polariser.ts';
import { message } from '../words/message.ts';
import { polariserRule, withPolariser } from './polarisers.ts';
import type { ShotRule } from './shot-rule.ts';

/** One-third stop: a smaller effect of turning the filter is below the step of most settings. */
const NOTICED_STOPS = 1 / 3;

export const polariserIdle: ShotRule<PolariserInUse> = {
  name: 'polariser-idle',
  severity: 'note',
  docs: {
    when: 'a polariser is on the lens, the subject reflects nearly straight back, and no light has a polarising sheet.',
    why: "Near normal incidence a reflection is not polarised. By Fresnel's equations, turning the filter changes a film of n 1.33 seen 4° off by about 0.02 stops. The filter only loses light.",
    remedy: 'Remove it, or put a polarising sheet on the light too.',
    bad: [
      {
        says: 'a polariser on a film that faces the lens',
        change: withPolariser({
          'kit/bodies/body-a/iso/usable-to': '12800',
        }),
      },
    ],
    good: [
      {
        says: 'a sheet on the light, in line with it',
        change: withPolariser({
          'lights/strip/polarised': 'parallel',
        }),
      },
    ],
  },
  ...polariserRule(
    ({ polarised, swingStops }) =>
      !polarised && swingStops !== undefined && swingStops < NOTICED_STOPS,
  ),
  words({ filter, angleRad, lossStops, swingStops }, say) {
    const cost = lossStops === undefined ? '' : message` and loses ${say.stops(lossStops)}`;
    return {
      what: message`${filter} has no effect here${cost}: the reflection is not polarised.`,
      why: message`The camera sees the subject ${say.angle(angleRad ?? 0)} off its normal; turning the filter changes the reflection by ${say.stops(swingStops ?? 0)}.`,
    };
  },
  numbers: ({ swingStops, lossStops }) => ({
    ...(swingStops !== undefined && { swingStops }),
    ...(lossStops !== undefined && { lossStops }),
  }),
};
