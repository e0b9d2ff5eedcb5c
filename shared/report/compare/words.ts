/** A comparison in words, the same for a terminal and for a review: what changed, what follows. */

import type {
  Comparison,
  EntryChange,
  FieldChange,
  FigureChange,
  FindingsChange,
  ShotChange,
} from '../../api/compared.ts';
import { type Change, worded } from '../../api/document.ts';
import { DECLARATIONS } from '../../figures/catalogue/catalogue.ts';
import { doesNotApply } from '../../figures/reasons.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import { boundsBehind, figureWords } from '../figures-text.ts';

/** The figures that a reviewer decides by, in the order of their weight, and what they are called. */
const DECIDING: readonly (readonly [name: string, label: string])[] = [...DECLARATIONS]
  .flatMap(([name, { label, review }]) => (review ? [{ name, label, ...review }] : []))
  .sort((a, b) => a.place - b.place)
  .map(({ name, label }) => [name, label]);

export const NOTHING_DIFFERENT = later`The plans are identical.`;

/** What heads findings that no single shot has. */
export const IN_NO_SHOT = later`findings about no single shot`;

const NOT_WRITTEN = later`not set`;

export const fieldWords = ({ path, before, after }: FieldChange): Change => ({
  label: path,
  before: before ?? inLanguage(NOT_WRITTEN),
  after: after ?? inLanguage(NOT_WRITTEN),
});

/** What follows, without what reads the same. */
export function followsWords(figures: readonly FigureChange[], say: Say): readonly Change[] {
  const byName = new Map(figures.map((change) => [change.figure, change]));
  return DECIDING.flatMap(([name, english]): Change[] => {
    const change = byName.get(name);
    if (!change) return [];
    const said = (when: 'before' | 'after'): string =>
      doesNotApply(change.notKnown, when)
        ? message`not for this subject`
        : `${figureWords(name, change[when], change.notKnown[when], say)}${boundsBehind(name, change[when], change.bounds?.[when], say)}`;
    const [was, is] = [said('before'), said('after')];
    const label = inLanguage(english);
    return was === is
      ? []
      : [{ label, before: worded(was), after: worded(`${is}${widthWords(change, name, say)}`) }];
  });
}

/** What is said of a change of which the value says too little, or too much. */
function widthWords(change: FigureChange, name: string, say: Say): string {
  const { before, after, notKnown, insideBounds, width } = change;
  const says = (value: unknown): string => figureWords(name, value, notKnown.after, say);
  const hadBounds = boundsBehind(name, before, change.bounds?.before, say) !== '';
  if (before !== null && after !== null && says(before) === says(after))
    return width === 'narrower' ? message`, narrower` : width === 'wider' ? message`, wider` : '';
  return insideBounds && hadBounds ? message`, inside its bounds` : '';
}

/** "drift", "drift, called glide before", "drift, new" */
export function changedName(change: EntryChange | ShotChange): string {
  const name = 'shot' in change ? change.shot : change.entry;
  if (change.before !== undefined) return message`${name}, called ${change.before} before`;
  if (change.state === 'changed') return name;
  return change.state === 'new' ? message`${name}, new` : message`${name}, removed`;
}

/** Whether nothing of it is left to be said: a difference too small to read. */
const saysNothing = (change: ShotChange, say: Say): boolean =>
  change.state === 'changed' &&
  change.before === undefined &&
  change.fields.length === 0 &&
  followsWords(change.figures, say).length === 0 &&
  change.findings.gone.length + change.findings.new.length === 0 &&
  change.findings.changed.every(readsTheSame);

/** Still found with other numbers, too little for its words to say. */
export const readsTheSame = ({ before, after }: FindingsChange['changed'][number]): boolean =>
  before.what === after.what;

export const sameShotsWords = (count: number): string =>
  count === 1 ? message`${count} shot unchanged.` : message`${count} shots unchanged.`;

/** The shots of which there is something to say, and how many others there are. */
export function toldShots(
  { shots, sameShots }: Comparison,
  say: Say,
): { readonly told: readonly ShotChange[]; readonly rest: number } {
  const told = shots.filter((shot) => !saysNothing(shot, say));
  return { told, rest: sameShots + shots.length - told.length };
}
