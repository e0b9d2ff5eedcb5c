import type { CutFigures } from '../figures/edit-figures.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { valueOrName, withCuts } from './edit-rule.ts';
import { type GradedCut, gradeGroups, usual } from './grade-groups.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly cut: string;
  readonly shot: string;
  /** Colours of its light, K, and of the light of the others. */
  readonly kelvin: readonly number[];
  readonly othersKelvin: readonly number[];
  readonly otherShot: string;
}

export const gradeSplits: PlanRule<Facts> = {
  name: 'grade-splits',
  severity: 'note',
  docs: {
    when: 'cuts that share a grade use shots lit at different colour temperatures.',
    why: 'Shots under different colour temperatures cannot share one grade: the colours of a film differ under each light. With the same light and white balance throughout, one grade is enough.',
    remedy: 'Give the cuts under the other light their own `grade`, or light all shots alike.',
    bad: [
      {
        says: 'one shot under the bulb',
        change: {
          'shots/frost/light': '[bulb]',
          'shots/frost/iso': 'auto',
          'shots/frost/white-balance': '3200 K',
          ...withCuts({ one: 'shot: skin, duration: 4 s', two: 'shot: frost, duration: 4 s' }),
        },
      },
    ],
    good: [
      {
        says: 'its own grade',
        change: {
          'shots/frost/light': '[bulb]',
          'shots/frost/iso': 'auto',
          'shots/frost/white-balance': '3200 K',
          ...withCuts({
            one: 'shot: skin, duration: 4 s',
            two: 'shot: frost, duration: 4 s, grade: warm',
          }),
        },
      },
      {
        says: 'one light for all',
        change: withCuts({ one: 'shot: skin, duration: 4 s', two: 'shot: frost, duration: 4 s' }),
      },
    ],
  },
  check: ({ edit, shots }) =>
    [...gradeGroups(edit, shots).values()].flatMap((group): Observation<Facts>[] => {
      const lit = group.filter(({ shot }) => shot.lightColours.length > 0);
      const most = usual(lit.map(coloursOf));
      const other = lit.find((one) => coloursOf(one) === most);
      const seen = new Set<string>();
      return lit.flatMap(({ cut, shot }): Observation<Facts>[] => {
        if (coloursOf({ cut, shot }) === most || !other || seen.has(shot.shot)) return [];
        seen.add(shot.shot);
        const facts = {
          ...{ cut: cut.name, shot: shot.shot },
          kelvin: shot.lightColours,
          othersKelvin: other.shot.lightColours,
          otherShot: other.shot.shot,
        };
        return [{ at: gradePlace(cut), facts }];
      });
    }),
  words: ({ cut, kelvin, othersKelvin, otherShot }, say) => ({
    what: message`${cut} is lit at ${colours(kelvin, (k) => say.number(k))} but shares a grade with ${otherShot}, lit at ${colours(othersKelvin, (k) => say.number(k))}.`,
    why: message`Shots under different colour temperatures cannot share one grade.`,
  }),
  fixes({ facts: { shot } }, { edit }) {
    const odd = (edit?.cuts ?? []).filter((cut) => cut.shot === shot && cut.fields);
    const edits = odd.flatMap(({ fields }) => setTo('', fields!.grade.at, shot).edits);
    return edits.length === 0
      ? []
      : [
          {
            title: message`Give ${shot} its own grade`,
            sideEffects: message`one more grade`,
            edits,
          },
        ];
  },
};

const coloursOf = ({ shot }: GradedCut): string => shot.lightColours.join(' ');

const colours = (kelvin: readonly number[], number: (value: number) => string): string =>
  `${kelvin.map(number).join(message` and `)} K`;

const gradePlace = (cut: CutFigures) =>
  valueOrName(cut, cut.fields?.grade.state === 'known' ? cut.fields.grade : cut.fields?.shot);
