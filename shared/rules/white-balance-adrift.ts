import { setTo } from '../plan/fixes.ts';
import type { Kelvin } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { withCuts } from './edit-rule.ts';
import { gradeGroups, usual } from './grade-groups.ts';
import type { PlanRule, PlanView, ShotSummary } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** Settings closer than this look the same (a just noticeable step is about 5 mired). */
const SAME_MIRED = 5;

interface Facts {
  readonly shot: string;
  readonly kelvin: number | null;
  /** White balance of the other shots under the same light; null: this shot's is automatic. */
  readonly others: number | null;
  readonly otherShots: number;
  /** The others are those that share its grade in the edit. */
  readonly graded: boolean;
}

export const whiteBalanceAdrift: PlanRule<Facts> = {
  name: 'white-balance-adrift',
  severity: 'warning',
  docs: {
    when: 'white balance is automatic, or differs from other shots under the same colour temperature or in the same grade.',
    why: 'Automatic white balance changes with the contents of the frame and drifts during a take. Different settings under the same light cannot share one grade.',
    remedy: 'Set the colour temperature of the light, the same in every shot under it.',
    bad: [
      { says: 'automatic', change: { 'shots/frost/white-balance': 'auto' } },
      {
        says: 'two shots that share one grade',
        change: {
          'shots/frost/white-balance': '4800 K',
          ...withCuts({ one: 'shot: skin, duration: 4 s', two: 'shot: frost, duration: 4 s' }),
        },
      },
    ],
    good: [{ says: 'fixed', change: { 'shots/frost/white-balance': '5600 K' } }],
  },
  check({ edit, shots }) {
    const colours = shots.map(colourKey);
    const byLight = usualByLight(shots, colours);
    const byGrade = usualByGrade({ edit, shots });
    return shots.flatMap((shot, index): readonly Observation<Facts>[] => {
      const { whiteBalance } = shot;
      if (!whiteBalance) return [];
      const { value, at } = whiteBalance;
      const others = byLight.get(colours[index]!) ?? null;
      const facts = { shot: shot.shot, otherShots: others?.count ?? 0, graded: false };
      if (value === 'auto')
        return [{ at, facts: { ...facts, kelvin: null, others: suggestion(shot, others) } }];
      if (others && others.count >= 2 && !near(value, others.kelvin))
        return [{ at, facts: { ...facts, kelvin: value, others: others.kelvin } }];
      const graded = byGrade.get(shot.shot);
      if (graded === undefined || near(value, graded)) return [];
      return [{ at, facts: { ...facts, kelvin: value, others: graded, graded: true } }];
    });
  },
  words: ({ kelvin, others, otherShots, graded }, say) =>
    kelvin === null
      ? {
          what: message`Automatic white balance drifts during the take.`,
          why: message`It changes with the contents of the frame and cannot be graded out.`,
        }
      : {
          what: graded
            ? message`White balance is ${say.number(kelvin)} K; other shots in its grade have ${say.number(others ?? 0)} K.`
            : message`White balance is ${say.number(kelvin)} K; ${otherShots} shots under this light have ${say.number(others ?? 0)} K.`,
          why: message`They cannot share one grade.`,
        },
  numbers: ({ kelvin, others }) => ({
    ...(kelvin !== null && { kelvin }),
    ...(others !== null && { othersKelvin: others }),
  }),
  fixes({ at, facts: { others } }) {
    if (others === null) return [];
    const text = KINDS['colour-temperature'].print(others as Kelvin);
    return [setTo(message`Set white balance to ${text}`, at, text)];
  },
};

/** By shot: the white balance that most cuts of its grade have, of those under light of its colour. */
function usualByGrade(view: Pick<PlanView, 'edit' | 'shots'>): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const group of gradeGroups(view.edit, view.shots).values()) {
    const byLight = new Map<string, ShotSummary[]>();
    for (const { shot } of group) {
      const alike = byLight.get(colourKey(shot));
      if (alike) alike.push(shot);
      else byLight.set(colourKey(shot), [shot]);
    }
    for (const alike of byLight.values()) {
      const most = usual(alike.flatMap((shot) => fixedKelvin(shot) ?? []));
      if (most === undefined) continue;
      for (const { shot } of alike) if (!found.has(shot)) found.set(shot, most);
    }
  }
  return found;
}

const fixedKelvin = ({ whiteBalance }: ShotSummary): number | undefined =>
  typeof whiteBalance?.value === 'number' ? whiteBalance.value : undefined;

const near = (a: number, b: number): boolean => Math.abs(1e6 / a - 1e6 / b) < SAME_MIRED;

interface Usual {
  readonly kelvin: number;
  readonly count: number;
}

/**
 * The white balance that most shots have, for each colour of light; none where no light says its
 * colour.
 * @param colours of each shot's light, as `colourKey` says them
 */
function usualByLight(
  shots: readonly ShotSummary[],
  colours: readonly string[],
): ReadonlyMap<string, Usual> {
  const counts = new Map<string, Map<number, number>>();
  shots.forEach(({ whiteBalance }, index) => {
    const value = whiteBalance?.value;
    const key = colours[index]!;
    if (typeof value !== 'number' || key === '') return;
    const ofLight = counts.get(key) ?? new Map<number, number>();
    ofLight.set(value, (ofLight.get(value) ?? 0) + 1);
    counts.set(key, ofLight);
  });
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
