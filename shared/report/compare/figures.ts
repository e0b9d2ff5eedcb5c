/** Figures of before and after: which of them differ. */

import type { FigureChange } from '../../api/compared.ts';
import { CATALOGUE } from '../../figures/catalogue/catalogue.ts';
import type { ShotFiguresJson } from '../../figures/json.ts';
import { doesNotApply, type Reason, reasonsOf } from '../../figures/reasons.ts';

/** By name in the contract ("depthMm.needed"): the value, and why it is null where it is. */
export type Figures = ReadonlyMap<
  string,
  { readonly value: unknown; readonly why: string | undefined; readonly applies: boolean }
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
        notKnown: reasonsOf([...whyNull('before', was), ...whyNull('after', is)]),
      },
    ];
  });

const whyNull = (when: 'before' | 'after', entry: EntryOf<Figures> | undefined): Reason[] =>
  entry?.value === null && entry.why !== undefined
    ? [{ figure: when, why: entry.why, applies: entry.applies }]
    : [];

type EntryOf<M> = M extends ReadonlyMap<string, infer E> ? E : never;

export const shotFigureChanges = (
  before: ShotFiguresJson,
  after: ShotFiguresJson,
): readonly FigureChange[] => figureChanges(flat(before), flat(after));

/** Groups by their parts, as `depthMm.needed`. What was measured is told by the plan's own fields. */
const flat = ({ notKnown, ...figures }: ShotFiguresJson): Figures =>
  new Map(
    COMPARED.flatMap(({ key, part, name }) => {
      const of = figures[key];
      if (of === undefined) return [];
      const value =
        part === undefined ? of : ((of as Readonly<Record<string, unknown>>)[part] ?? null);
      return [[name, { value, why: notKnown[name], applies: !doesNotApply(notKnown, name) }]];
    }),
  );

/** Without lists of many, which are for programs that ask for them. */
const COMPARED = CATALOGUE.flatMap(
  ([key, entry]): readonly { key: string; part?: string; name: string }[] => {
    if (entry.kind === 'figure') return entry.isLong ? [] : [{ key, name: key }];
    return Object.keys(entry.parts).map((part) => ({ key, part, name: `${key}.${part}` }));
  },
);

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
