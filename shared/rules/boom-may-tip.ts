import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { worstOf } from './loads.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** The usual margin against tipping. Common practice; local rules may ask for more. */
const MARGIN = 1.5;

interface Facts {
  readonly factor: number;
  readonly stand: string;
}

const judged = (at: Place, stand: string, factor: number | null): readonly Observation<Facts>[] =>
  factor === null || factor >= MARGIN
    ? []
    : [{ at, severity: factor < 1 ? 'error' : 'warning', facts: { factor, stand } }];

export const boomMayTip: PlanRule<Facts> = {
  name: 'boom-may-tip',
  severity: 'warning',
  docs: {
    when: 'the stability factor of a boom under a rig or a light is below 1.5; an error below 1.',
    why: 'The stability factor compares moments about the edge of the footprint: stand and counterweight against load and reach. A caught cable or an uneven floor reduces the margin.',
    remedy:
      'Add counterweight or sandbags, widen the base or shorten the reach. Fit a safety cable to the load. Follow local rules and the advice of a qualified person.',
    bad: [
      {
        says: 'too little counterweight',
        change: {
          'kit/stands':
            '\n    arm: { kind: boom, footprint: 0.8 m, reach: 1.4 m, mass: 2 kg, counterweight: 1 kg, counterweight-arm: 100 mm }',
          'rigs/bench/support': '{ stand: arm, overhead: no }',
        },
      },
    ],
    good: [
      {
        says: 'enough counterweight',
        change: {
          'kit/stands':
            '\n    arm: { kind: boom, footprint: 1.1 m, reach: 1.2 m, mass: 6 kg, counterweight: 4 kg, counterweight-arm: 500 mm }',
          'rigs/bench/support': '{ stand: arm, overhead: no }',
        },
      },
    ],
  },
  check({ carried, shots }) {
    const lights = oncePerPlace(shots.flatMap(({ heldLights }) => heldLights));
    const least = worstOf(carried, ({ stabilityFactor }) =>
      stabilityFactor === null ? null : -stabilityFactor,
    );
    const rigs = least.flatMap(({ stabilityFactor, stand }) =>
      stand ? judged(stand.at, stand.name, stabilityFactor) : [],
    );
    return [
      ...rigs,
      ...lights.flatMap(({ at, stand, stabilityFactor }) => judged(at, stand, stabilityFactor)),
    ];
  },
  words: ({ factor, stand }, say) => ({
    what:
      factor < 1
        ? message`${stand} will tip over: stability factor ${say.numberBeside(factor, 1)} (below 1).`
        : message`${stand} may tip over: stability factor ${say.numberBeside(factor, MARGIN)} (below ${MARGIN}).`,
    why: message`Use at least ${MARGIN} and fit a safety cable to the load. ${deferring()}`,
  }),
  numbers: ({ factor }) => ({ stabilityFactor: factor }),
};
