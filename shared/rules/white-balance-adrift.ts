import { miredOf } from '../exposure/mired.ts';
import { setTo } from '../plan/fixes.ts';
import type { Kelvin } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { miredWords, type Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { withCuts } from './edit-rule.ts';
import { gradeGroups, usual } from './grade-groups.ts';
import type { ColouredLight, PlanRule, PlanView, ShotSummary } from './plan-rule.ts';
import type { Observation, Words } from './rule.ts';

/** Settings closer than this look the same (a just noticeable step is about 5 mired). */
const SAME_MIRED = 5;
/** Further from every light than this is a cast. The weakest gels for correction, an eighth, shift as much. */
const CAST_MIRED = 25;

interface Facts {
  readonly shot: string;
  readonly kelvin: number | null;
  /** White balance of the other shots under the same light; null: this shot's is automatic. */
  readonly others: number | null;
  readonly otherShots: number;
  /** The others are those that share its grade in the edit. */
  readonly graded: boolean;
  /** The light that is nearest to it, where all of them are far; null: what is at fault is another. */
  readonly lit: ColouredLight | null;
}

/** 5600 K is 178.6 mired; 81 more are 3852 K. */
const GELLED = {
  'kit/gels': '{ half-orange: { shift: 81 mired, transmission: 73 % } }',
  'shots/frost/relight': '{ panel: { gels: [half-orange] } }',
  'shots/frost/iso': 'auto',
};

export const whiteBalanceAdrift: PlanRule<Facts> = {
  name: 'white-balance-adrift',
  severity: 'warning',
  docs: {
    when: `white balance is automatic, or differs from other shots under the same colour temperature or in the same grade. A note where it is more than ${CAST_MIRED} mired from every light of the shot, behind their gels.`,
    why: 'Automatic white balance changes with the contents of the frame and drifts during a take. Different settings under the same light cannot share one grade. A white balance far from the light gives the whole picture a cast, which may be meant.',
    remedy:
      'Set the colour temperature of the light, the same in every shot under it. Accept the note where the cast is meant.',
    bad: [
      { says: 'automatic', change: { 'shots/frost/white-balance': 'auto' } },
      {
        says: 'two shots that share one grade',
        change: {
          'shots/frost/white-balance': '4800 K',
          ...withCuts({ one: 'shot: skin, duration: 4 s', two: 'shot: frost, duration: 4 s' }),
        },
      },
      { says: 'the colour of the lamp, not that behind its gel', change: GELLED },
    ],
    good: [
      { says: 'fixed', change: { 'shots/frost/white-balance': '5600 K' } },
      {
        says: 'the colour behind the gel',
        change: { ...GELLED, 'shots/frost/white-balance': '3850 K' },
      },
    ],
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
      const facts = { shot: shot.shot, otherShots: others?.count ?? 0, graded: false, lit: null };
      if (value === 'auto')
        return [{ at, facts: { ...facts, kelvin: null, others: suggestion(shot, others) } }];
      if (others && others.count >= 2 && !near(value, others.kelvin))
        return [{ at, facts: { ...facts, kelvin: value, others: others.kelvin } }];
      const graded = byGrade.get(shot.shot);
      if (graded !== undefined && !near(value, graded))
        return [{ at, facts: { ...facts, kelvin: value, others: graded, graded: true } }];
      const lit = castBy(shot, value);
      if (lit === null) return [];
      const target = suggestion(shot, null);
      return [{ at, severity: 'note', facts: { ...facts, kelvin: value, others: target, lit } }];
    });
  },
  words: ({ kelvin, others, otherShots, graded, lit }, say) =>
    kelvin === null
      ? {
          what: message`Automatic white balance drifts during the take.`,
          why: message`It changes with the contents of the frame and cannot be graded out.`,
        }
      : lit !== null
        ? castWords(kelvin, lit, say)
        : {
            what: graded
              ? message`White balance is ${say.number(kelvin)} K; other shots in its grade have ${say.number(others ?? 0)} K.`
              : message`White balance is ${say.number(kelvin)} K; ${otherShots} shots under this light have ${say.number(others ?? 0)} K.`,
            why: message`They cannot share one grade.`,
          },
  numbers: ({ kelvin, others, lit }) => ({
    ...(kelvin !== null && { kelvin }),
    ...(lit !== null
      ? { lightKelvin: lit.kelvin, gelsMired: lit.shift }
      : others !== null && { othersKelvin: others }),
  }),
  fixes({ at, facts: { others } }) {
    if (others === null) return [];
    const text = KINDS['colour-temperature'].print(asSet(others) as Kelvin);
    return [setTo(message`Set white balance to ${text}`, at, text)];
  },
};

/** Bodies are set in steps of 10 K at the finest. */
const asSet = (kelvin: number): number => Math.round(kelvin / 10) * 10;

function castWords(kelvin: number, { light, kelvin: lit, shift }: ColouredLight, say: Say): Words {
  const gels = shift === 0 ? '' : message` behind its gels (${miredWords(shift)})`;
  const set = say.number(kelvin);
  return {
    what: message`White balance is ${set} K; \`${light}\` has ${say.number(asSet(lit))} K${gels}.`,
    why:
      lit < kelvin
        ? message`The whole picture will be warm. Accept the finding if that is meant.`
        : message`The whole picture will be cold. Accept the finding if that is meant.`,
  };
}

/** The nearest of its lights where all are to one side and far; null: none, or not known. */
function castBy({ lit }: ShotSummary, kelvin: number): ColouredLight | null {
  if (lit === null || lit.length === 0) return null;
  const off = lit.map((light) => ({ light, mired: miredOf(light.kelvin) - miredOf(kelvin) }));
  const nearest = off.reduce((a, b) => (Math.abs(b.mired) < Math.abs(a.mired) ? b : a));
  const isOneSided = off.every(({ mired }) => mired * nearest.mired > 0);
  return isOneSided && Math.abs(nearest.mired) > CAST_MIRED ? nearest.light : null;
}

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

const near = (a: number, b: number): boolean => Math.abs(miredOf(a) - miredOf(b)) < SAME_MIRED;

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
