import { type PolariserInUse, polariserOn } from '../figures/polariser.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

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
        change: {
          'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
          'shots/skin/filters': '[polariser]',
          'shots/skin/iso': 'auto',
          'kit/bodies/body-a/iso/usable-to': '12800',
        },
      },
    ],
    good: [
      {
        says: 'a sheet on the light, in line with it',
        change: {
          'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
          'shots/skin/filters': '[polariser]',
          'shots/skin/iso': 'auto',
          'lights/strip/polarised': 'parallel',
        },
      },
    ],
  },
  check({ bench }) {
    const polariser = polariserOn(bench);
    if (!polariser || polariser.polarised) return [];
    const { swingStops, at } = polariser;
    if (swingStops === undefined || swingStops >= NOTICED_STOPS) return [];
    return [
      { at, facts: polariser, related: bench.tiltRad.known ? relatedTo(at, bench.tiltRad) : [] },
    ];
  },
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
  fixes({ facts: { filter, others } }, { bench }) {
    return [setTo(message`Remove ${filter}`, bench.fields.filters.at, `[${others.join(', ')}]`)];
  },
};
