/** What a change does to the edit: its length, where cuts begin, what the clips give of them. */

import type { FigureChange } from '../../api/compared.ts';
import { type Change, worded } from '../../api/document.ts';
import type { CutJson, EditJson } from '../../figures/edit-json.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import { framesWords, secondsWords, speedWords } from '../edit-words.ts';
import { type Figures, figureChanges } from './figures.ts';

/** Of the whole, and of each cut: what a reviewer asks. */
const OF_THE_EDIT = ['totalFrames', 'totalTimecode'] as const;
const OF_A_CUT = [
  'startFrame',
  'durationFrames',
  'speed',
  'repeatsFrames',
  'sourceS',
  'fromBeatFrames',
  'uncoveredFrames',
] as const satisfies readonly (keyof CutJson)[];

/** `totalFrames`, `cuts.opening.startFrame`; cuts by their name, gone and new ones against nothing. */
export const editChanges = (
  before: EditJson | null,
  after: EditJson | null,
): readonly FigureChange[] => figureChanges(flat(before), flat(after));

function flat(edit: EditJson | null): Figures {
  if (!edit) return new Map();
  // A frame's share of a second has no end; what is the same to nine digits is the same.
  const entry = (value: unknown, why: string | undefined) => ({
    value: typeof value === 'number' ? Number(value.toPrecision(9)) : value,
    why,
    applies: true,
  });
  return new Map([
    ...OF_THE_EDIT.map((key) => [key, entry(edit[key], edit.notKnown[key])] as const),
    ...edit.cuts.flatMap((cut) =>
      OF_A_CUT.map(
        (key) => [`cuts.${cut.cut}.${key}`, entry(cut[key], cut.notKnown[key])] as const,
      ),
    ),
  ]);
}

/** A long edit that moves as a whole is told by the first of its cuts. */
const MOST_ROWS = 12;

/** "length of the edit" · "00:00:24:00" → "00:00:25:10" */
export function editWords(changes: readonly FigureChange[]): readonly Change[] {
  const rows = changes.flatMap((change): Change[] => {
    const key = OF_A_CUT.find((one) => change.figure.endsWith(`.${one}`));
    const say = key ? CUT_WORDS[key] : WHOLE[change.figure];
    if (!say) return [];
    const label = inLanguage(say.label);
    const cut = key && change.figure.slice('cuts.'.length, -key.length - 1);
    const said = (value: unknown, why: string | undefined) =>
      value === null || value === undefined
        ? worded(why === undefined ? message`none` : message`unknown: ${why}`)
        : say.words(value);
    return [
      {
        label: cut === undefined ? label : `${cut}: ${label}`,
        before: said(change.before, change.notKnown.before),
        after: said(change.after, change.notKnown.after),
      },
    ];
  });
  const more = rows.length - MOST_ROWS;
  const others = { label: moreWords(more), before: '', after: '' };
  return more <= 0 ? rows : [...rows.slice(0, MOST_ROWS), others];
}

const moreWords = (more: number): string =>
  more === 1 ? message`and ${more} more change` : message`and ${more} more changes`;

interface Said {
  readonly label: string;
  readonly words: (value: unknown) => string;
}

const frames = (value: unknown): string => framesWords(Number(Number(value).toFixed(1)));

const WHOLE: Readonly<Record<string, Said>> = {
  totalFrames: { label: later`length of the edit`, words: frames },
};

const CUT_WORDS: Readonly<Record<(typeof OF_A_CUT)[number], Said>> = {
  startFrame: { label: later`begins at frame`, words: String },
  durationFrames: { label: later`length`, words: frames },
  speed: { label: later`speed`, words: (value) => speedWords(value as CutJson['speed']) },
  repeatsFrames: {
    label: later`repeats frames`,
    words: (value) => (value ? message`yes` : message`no`),
  },
  sourceS: { label: later`clip used`, words: (value) => secondsWords(Number(value)) },
  fromBeatFrames: { label: later`from the beat`, words: frames },
  uncoveredFrames: { label: later`not covered by a clip`, words: frames },
};
