import type { CutFigures } from '../figures/edit-figures.ts';
import { message } from '../words/message.ts';
import { valueOrName, withCuts } from './edit-rule.ts';
import { type GradedCut, gradeGroups, usual } from './grade-groups.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { setTo } from './shot-rule.ts';

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
    when: 'cuts that share a grade show shots under light of different colour.',
    why: 'Common practice: the same light and white balance throughout, so one grade serves all. Under another light the same colours of the film come out otherwise, and no single grade brings both home.',
    remedy: 'Give the cuts under the other light a `grade` of their own, or light all alike.',
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
        says: 'a grade of its own',
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
    what: message`${cut} is lit at ${colours(kelvin, (k) => say.number(k))}, ${otherShot} of the same grade at ${colours(othersKelvin, (k) => say.number(k))}.`,
    why: message`One grade serves all only under one light.`,
  }),
  fixes({ facts: { shot } }, { edit }) {
    const odd = (edit?.cuts ?? []).filter((cut) => cut.shot === shot && cut.fields);
    const edits = odd.flatMap(({ fields }) => setTo('', fields!.grade.at, shot).edits);
    return edits.length === 0
      ? []
      : [{ title: message`Grade ${shot} apart`, sideEffects: message`one more grade`, edits }];
  },
};

const coloursOf = ({ shot }: GradedCut): string => shot.lightColours.join(' ');

const colours = (kelvin: readonly number[], number: (value: number) => string): string =>
  `${kelvin.map(number).join(message` and `)} K`;

const gradePlace = (cut: CutFigures) =>
  valueOrName(cut, cut.fields?.grade.state === 'known' ? cut.fields.grade : cut.fields?.shot);
