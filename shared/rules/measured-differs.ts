import type { Disagreement, MeasuredKey } from '../figures/disagreement.ts';
import { removal } from '../plan/fixes.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

type Facts = Pick<Disagreement, 'key' | 'measured' | 'computed'>;

export const measuredDiffers: PlanRule<Facts> = {
  name: 'measured-differs',
  severity: 'warning',
  docs: {
    when: 'a measured value and the value calculated from the kit data differ by more than 10%.',
    why: 'Measured values override calculated ones. But with correct kit data the paraxial calculation is rarely this far off. The usual causes are a part missing from the rig, another focus or aperture setting, or a mistake in the kit data.',
    remedy:
      'Measure again, state the `ring` and `aperture` of the measurement, or correct the parts of the rig and their data.',
    bad: [
      {
        says: 'measured with another rig',
        change: { 'rigs/bench/measured': '{ ring: closest, field: 24 mm }' },
      },
    ],
    good: [
      {
        says: 'a lens a little shorter than its data sheet says',
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
      what: message`Measured ${inLanguage(noun)} is ${print(say, measured)}; calculated, it is ${print(say, computed)}.`,
      why: message`They differ by ${say.percent(share)}. The measured value is used.`,
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
      message`Remove the measured ${inLanguage(KINDS[key].noun)}`,
      at,
      message`values are calculated from the kit data`,
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
