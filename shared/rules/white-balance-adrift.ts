import type { Kelvin } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import type { PlanRule, ShotSummary } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { setTo } from './shot-rule.ts';

/** Settings nearer than this are one to the eye (a just noticeable step is about 5 mired). */
const SAME_MIRED = 5;

interface Facts {
  readonly shot: string;
  readonly kelvin: number | null;
  /** What the other shots under the same light have; null: automatic, whatever the others have. */
  readonly others: number | null;
  readonly otherShots: number;
}

export const whiteBalanceAdrift: PlanRule<Facts> = {
  name: 'white-balance-adrift',
  severity: 'warning',
  docs: {
    when: 'the white balance is automatic, or differs from that of the other shots under light of the same colour.',
    why: 'Automatic white balance follows what is in the frame and drifts within a take; different settings under the same light can’t be graded as one. Common practice: one light, one white balance, one grade.',
    remedy: 'Set the light’s own colour temperature, the same in every shot under it.',
    bad: [{ says: 'automatic', change: { 'shots/frost/white-balance': 'auto' } }],
    good: [{ says: 'fixed', change: { 'shots/frost/white-balance': '5600 K' } }],
  },
  check({ shots }) {
    const usual = usualByLight(shots);
    return shots.flatMap((shot): readonly Observation<Facts>[] => {
      const { whiteBalance } = shot;
      if (!whiteBalance) return [];
      const { value, at } = whiteBalance;
      const others = usual.get(colourKey(shot)) ?? null;
      const facts = { shot: shot.shot, otherShots: others?.count ?? 0 };
      if (value === 'auto')
        return [{ at, facts: { ...facts, kelvin: null, others: suggestion(shot, others) } }];
      if (!others || others.count < 2 || near(value, others.kelvin)) return [];
      return [{ at, facts: { ...facts, kelvin: value, others: others.kelvin } }];
    });
  },
  words: ({ kelvin, others, otherShots }, say) =>
    kelvin === null
      ? {
          what: 'Automatic white balance drifts within the take.',
          why: 'It follows what is in the frame; no grade takes it back.',
        }
      : {
          what: `White balance ${say.number(kelvin)} K differs from the ${say.number(others ?? 0)} K of ${otherShots} shots under this light.`,
          why: 'One grade would not serve them all.',
        },
  numbers: ({ kelvin, others }) => ({
    ...(kelvin !== null && { kelvin }),
    ...(others !== null && { othersKelvin: others }),
  }),
  fixes({ at, facts: { others } }) {
    if (others === null) return [];
    const text = KINDS['colour-temperature'].print(others as Kelvin);
    return [setTo(`Set ${text}`, at, text)];
  },
};

const near = (a: number, b: number): boolean => Math.abs(1e6 / a - 1e6 / b) < SAME_MIRED;

interface Usual {
  readonly kelvin: number;
  readonly count: number;
}

/** The white balance that most shots have, for each colour of light; none where no light says its colour. */
function usualByLight(shots: readonly ShotSummary[]): ReadonlyMap<string, Usual> {
  const counts = new Map<string, Map<number, number>>();
  for (const shot of shots) {
    const value = shot.whiteBalance?.value;
    const colours = colourKey(shot);
    if (typeof value !== 'number' || colours === '') continue;
    const ofLight = counts.get(colours) ?? new Map<number, number>();
    ofLight.set(value, (ofLight.get(value) ?? 0) + 1);
    counts.set(colours, ofLight);
  }
  return new Map(
    [...counts].map(([colours, ofLight]) => {
      const [most] = [...ofLight].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
      return [colours, { kelvin: most![0], count: most![1] }];
    }),
  );
}

const colourKey = ({ lightColours }: ShotSummary): string => lightColours.join(' ');

const suggestion = (
  { lightColours }: ShotSummary,
  others: { readonly kelvin: number } | null,
): number | null => others?.kelvin ?? (lightColours.length === 1 ? lightColours[0]! : null);
