/** Figures of before and after: which of them differ. */

import type { FigureChange } from '../../api/compared.ts';
import type { ShotFiguresJson } from '../../figures/json.ts';

/** By name in the contract ("depthMm.needed"): the value, and why it is null where it is. */
export type Figures = ReadonlyMap<
  string,
  { readonly value: unknown; readonly why: string | undefined }
>;

export const figureChanges = (before: Figures, after: Figures): readonly FigureChange[] =>
  [...new Set([...after.keys(), ...before.keys()])].flatMap((figure): FigureChange[] => {
    const [was, is] = [before.get(figure), after.get(figure)];
    const [old, now] = [was?.value ?? null, is?.value ?? null];
    if (isAlike(old, now) && (old !== null || was?.why === is?.why)) return [];
    return [
      {
        figure,
        before: old,
        after: now,
        notKnown: {
          ...(old === null && was?.why !== undefined && { before: was.why }),
          ...(now === null && is?.why !== undefined && { after: is.why }),
        },
      },
    ];
  });

export const shotFigureChanges = (
  before: ShotFiguresJson,
  after: ShotFiguresJson,
): readonly FigureChange[] => figureChanges(flat(before), flat(after));

/** Values of figures that are lists of many, for programs that ask for them. */
const LONG: ReadonlySet<string> = new Set(['filmColours', 'bubbleImages', 'lossByPart']);

/** `depthMm` by its parts, as `depthMm.needed`. What was measured is told by the plan's own fields. */
function flat({ notKnown, measured: _, ...figures }: ShotFiguresJson): Figures {
  const rows = Object.entries(figures).flatMap(([name, value]): [string, unknown][] => {
    if (LONG.has(name)) return [];
    if (name !== 'depthMm' || value === null) return [[name, value]];
    return Object.entries(value as object).map(([part, inner]) => [`${name}.${part}`, inner]);
  });
  return new Map(rows.map(([name, value]) => [name, { value, why: notKnown[name] }]));
}

/** Less than this is the rounding of another way to the same number. */
const SAME = 1e-9;

/** The same but for rounding, and for the names that what is named goes by now. */
export function isAlike(a: unknown, b: unknown, rename = (name: string): string => name): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return a === b || Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
  if (typeof a === 'string' && typeof b === 'string') return a === b || rename(a) === b;
  if (typeof a === 'object' && typeof b === 'object' && a !== null && b !== null) {
    const [left, right] = [Object.entries(a), Object.entries(b)];
    return (
      left.length === right.length &&
      left.every(([key, value]) => isAlike(value, (b as Record<string, unknown>)[key], rename))
    );
  }
  return a === b;
}
