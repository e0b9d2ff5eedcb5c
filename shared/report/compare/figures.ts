/** Figures of before and after: which of them differ. */

import type { ComparedShot, FigureChange } from '../../api/compared.ts';
import type { FigureBounds } from '../../figures/bounds-json.ts';
import { CATALOGUE, DECLARATIONS } from '../../figures/catalogue/catalogue.ts';
import type { NumberBounds, ShotFiguresJson } from '../../figures/json.ts';
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

/** With the bounds of what changed; of what a reviewer decides by, a change of the bounds alone too. */
export function shotFigureChanges(
  before: ComparedShot,
  after: ComparedShot,
): readonly FigureChange[] {
  const [was, is] = [flat(before.figures), flat(after.figures)];
  const changes = figureChanges(was, is).map((change) => ({
    ...change,
    ...boundsChange(before, after, change),
  }));
  if ((before.sure?.inputs ?? '') === (after.sure?.inputs ?? '')) return changes;
  const changed = new Set(changes.map(({ figure }) => figure));
  const stayed = REVIEWED.flatMap((figure): FigureChange[] => {
    const value = is.get(figure)?.value ?? null;
    if (changed.has(figure) || value === null) return [];
    const same = { figure, before: was.get(figure)?.value ?? null, after: value, notKnown: {} };
    const { bounds, width } = boundsChange(before, after, same);
    return bounds && !isAlike(bounds.before, bounds.after)
      ? [{ ...same, bounds, ...(width && { width }) }]
      : [];
  });
  return [...changes, ...stayed];
}

type BoundsChange = Pick<FigureChange, 'bounds' | 'insideBounds' | 'width'>;

function boundsChange(
  before: ComparedShot,
  after: ComparedShot,
  { figure, before: was, after: is }: FigureChange,
): BoundsChange {
  const old = was === null ? undefined : before.sure?.bounds(figure);
  const now = is === null ? undefined : after.sure?.bounds(figure);
  if (!old && !now) return {};
  const width = was === null || is === null ? undefined : widthChange(spanOf(old), spanOf(now));
  return {
    bounds: { before: old ?? null, after: now ?? null },
    ...(old && !isAlike(was, is) && isInside(is, old) && { insideBounds: true }),
    ...(width && { width }),
  };
}

const numeric = (value: unknown): number =>
  value === 'endless' ? Number.POSITIVE_INFINITY : Number(value);

const isPairs = (bounds: FigureBounds): bounds is readonly NumberBounds[] =>
  Array.isArray(bounds[0]);

const pairsOf = (bounds: FigureBounds): readonly NumberBounds[] =>
  isPairs(bounds) ? bounds : [bounds];

/** Each of its numbers between its ends. */
function isInside(value: unknown, bounds: FigureBounds): boolean {
  if (value === null) return false;
  const values = Array.isArray(value) ? value : [value];
  return pairsOf(bounds).every(([low, high], index) => {
    const at = numeric(values[index]);
    return at >= numeric(low) && at <= numeric(high);
  });
}

const spanOf = (bounds: FigureBounds | undefined): number =>
  bounds === undefined
    ? 0
    : Math.max(...pairsOf(bounds).map(([low, high]) => numeric(high) - numeric(low)));

function widthChange(before: number, after: number): BoundsChange['width'] {
  if (isAlike(before, after)) return undefined;
  return after < before ? 'narrower' : 'wider';
}

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

/** What a reviewer decides by. */
const REVIEWED = [...DECLARATIONS].flatMap(([name, { review }]) => (review ? [name] : []));

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
