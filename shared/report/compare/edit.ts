/** What a change does to the edit: its length, where cuts begin, what the clips give of them. */

import type { FigureChange } from '../../api/compared.ts';
import { type Change, worded } from '../../api/document.ts';
import { type Compared, CUT, EDIT } from '../../figures/catalogue/edit.ts';
import type { CutJson, EditJson } from '../../figures/edit-json.ts';
import { inLanguage, message } from '../../words/message.ts';
import { type Figures, figureChanges } from './figures.ts';

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
  const rows = (
    prefix: string,
    keys: readonly string[],
    { notKnown, ...values }: EditJson | CutJson,
  ) =>
    keys.map(
      (key) =>
        [
          `${prefix}${key}`,
          entry((values as Readonly<Record<string, unknown>>)[key], notKnown[key]),
        ] as const,
    );
  return new Map([
    ...rows('', [...OF_THE_EDIT.keys()], edit),
    ...edit.cuts.flatMap((cut) => rows(`${OF_CUTS}${cut.cut}.`, [...OF_A_CUT.keys()], cut)),
  ]);
}

const OF_CUTS = 'cuts.';

/** Of the whole, and of each cut: what a reviewer asks, by its key. */
const comparedIn = (
  declared: Readonly<Record<string, { readonly compared?: Compared<never> | null }>>,
) =>
  new Map(
    Object.entries(declared).flatMap(([key, { compared }]) =>
      compared === undefined ? [] : [[key, compared] as const],
    ),
  );
const OF_THE_EDIT = comparedIn(EDIT);
const OF_A_CUT = comparedIn(CUT);

/** A long edit that moves as a whole is told by the first of its cuts. */
const MOST_ROWS = 12;

/** "length of the edit" · "00:00:24:00" → "00:00:25:10" */
export function editWords(changes: readonly FigureChange[]): readonly Change[] {
  const rows = changes.flatMap((change): Change[] => {
    const [cut, key] = placeIn(change.figure);
    const say = (cut === null ? OF_THE_EDIT : OF_A_CUT).get(key);
    if (!say) return [];
    const label = inLanguage(say.label);
    const said = (value: unknown, why: string | undefined) =>
      value === null || value === undefined
        ? worded(why === undefined ? message`none` : message`unknown: ${why}`)
        : say.words(value as never);
    return [
      {
        label: cut === null ? label : `${cut}: ${label}`,
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

/** "cuts.opening.startFrame" as its cut and its key; a key has no point in it, a name may. */
function placeIn(figure: string): readonly [cut: string | null, key: string] {
  if (!figure.startsWith(OF_CUTS)) return [null, figure];
  const at = figure.lastIndexOf('.');
  return [figure.slice(OF_CUTS.length, at), figure.slice(at + 1)];
}
