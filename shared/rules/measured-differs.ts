import type { Disagreement, MeasuredKey } from '../figures/disagreement.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { oncePerPlace } from './once-per-place.ts';
import { type PlanRule, removal } from './plan-rule.ts';

type Facts = Pick<Disagreement, 'key' | 'measured' | 'computed'>;

export const measuredDiffers: PlanRule<Facts> = {
  name: 'measured-differs',
  severity: 'warning',
  docs: {
    when: 'a measured value and the one that is worked out of the kit’s data are more than 10 % apart.',
    why: 'The measurement is what counts, and all figures follow it. But a paraxial chain of parts whose data are right is seldom so far off: a part left out of the rig, another ring or aperture setting, or a slip in the kit’s data is.',
    remedy:
      'Measure again, say the `ring` and `aperture` that it was measured at, or put the rig’s parts and their data right.',
    bad: [
      {
        says: 'another rig was on the bench',
        change: { 'rigs/bench/measured': '{ ring: closest, field: 24 mm }' },
      },
    ],
    good: [
      {
        says: 'the lens is a little shorter than printed',
        change: { 'rigs/bench/measured': '{ ring: closest, field: 35 mm }' },
      },
    ],
  },
  check: ({ shots }) =>
    oncePerPlace(shots.flatMap(({ disagreements }) => disagreements)).map(
      ({ at, key, measured, computed }) => ({ at, facts: { key, measured, computed } }),
    ),
  words({ key, measured, computed }, say) {
    const { noun, print } = KINDS[key];
    const share = Math.abs(measured / computed - 1);
    return {
      what: message`The ${inLanguage(noun)} was measured as ${print(say, measured)}; worked out it is ${print(say, computed)}.`,
      why: message`They are ${say.percent(share)} apart. Figures follow what was measured.`,
    };
  },
  size: ({ measured, computed }) => ({
    kind: 'percent',
    value: Math.abs(measured / computed - 1),
  }),
  numbers: ({ key, measured, computed }) => ({
    [`measured${KINDS[key].figure}`]: measured,
    [`computed${KINDS[key].figure}`]: computed,
  }),
  fixes: ({ at, facts: { key } }) => [
    removal(
      message`Take out the measured ${inLanguage(KINDS[key].noun)}`,
      at,
      message`figures rest on the kit’s data again`,
    ),
  ],
};

const KINDS: Readonly<
  Record<
    MeasuredKey,
    {
      readonly noun: string;
      readonly figure: string;
      readonly print: (say: Say, value: number) => string;
    }
  >
> = {
  field: { noun: later`field`, figure: 'FieldMm', print: (say, mm) => say.length(mm) },
  magnification: {
    noun: later`magnification`,
    figure: 'Magnification',
    print: (say, m) => say.magnification(m),
  },
  'effective-f-number': {
    noun: later`effective f-number`,
    figure: 'EffectiveFNumber',
    print: (say, n) => say.fNumber(n),
  },
  'working-distance': {
    noun: later`working distance`,
    figure: 'WorkingDistanceMm',
    print: (say, mm) => say.length(mm),
  },
  mass: { noun: later`mass`, figure: 'MassKg', print: (say, kg) => say.kilograms(kg) },
  balance: {
    noun: later`centre of gravity`,
    figure: 'CentreOfGravityMm',
    print: (say, mm) => say.length(mm),
  },
};
