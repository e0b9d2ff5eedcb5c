/** Between which values the figures of a shot lie, as the JSON has it. */
import { CATALOGUE } from './catalogue/catalogue.ts';
import type { Entry } from './catalogue/declaration.ts';
import type { Shape } from './catalogue/shape.ts';
import type { Figure } from './figure.ts';
import type { BoundsJson, NumberBounds, WidenedBy } from './json.ts';
import type { ShotFigures } from './shot-figures.ts';
import type { Bounds, UncertainShot } from './uncertain.ts';
import type { Width } from './width.ts';

/** "loss of long-200"; a constant by its name. For programs, and so in English. */
export const inputName = ({ key, of }: Width): string => (of === null ? key : `${key} of ${of}`);

type Take = (figures: ShotFigures) => Figure<unknown>;

export function boundsJson(uncertain: UncertainShot): BoundsJson {
  if (uncertain.widths.length === 0) return {};
  const bounds: Record<string, NumberBounds | readonly NumberBounds[]> = {};
  const widenedBy: Record<string, readonly WidenedBy[]> = {};
  for (const [name, shape, take] of CATALOGUE.flatMap(([key, entry]) => figuresIn(key, entry))) {
    const found = boundsOf(uncertain, shape, take);
    if (!found) continue;
    bounds[name] = found.bounds;
    widenedBy[name] = found.widest.widenedBy.map(({ width, share, mayBeImpossible }) => ({
      input: inputName(width),
      share,
      ...(mayBeImpossible && { mayBeImpossible }),
    }));
  }
  return Object.keys(bounds).length > 0 ? { bounds, widenedBy } : {};
}

function figuresIn(key: string, entry: Entry): readonly (readonly [string, Shape, Take])[] {
  if (entry.kind === 'figure') return [[key, entry.is, entry.of]];
  return Object.entries(entry.parts).map(([part, { is }]) => [
    `${key}.${part}`,
    is,
    (figures) => entry.of(figures)[part]!,
  ]);
}

export type FigureBounds = NumberBounds | readonly NumberBounds[];

const SHAPES_BY_NAME = new Map(
  CATALOGUE.flatMap(([key, entry]) => figuresIn(key, entry)).map(
    ([name, shape, take]) => [name, { shape, take }] as const,
  ),
);

/** The bounds of one figure by its name in the contract; undefined: it has no width. */
export function boundsOfNamed(uncertain: UncertainShot, name: string): FigureBounds | undefined {
  const found = SHAPES_BY_NAME.get(name);
  return found && boundsOf(uncertain, found.shape, found.take)?.bounds;
}

/** Of numbers and pairs of them; words, lists and records have none. */
export function boundsOf(uncertain: UncertainShot, shape: Shape, take: Take) {
  if (shape.kind === 'number') {
    const bounds = uncertain.bounds(take as (figures: ShotFigures) => Figure<number>);
    return bounds && { bounds: endsOf(bounds), widest: bounds };
  }
  if (shape.kind !== 'pair') return undefined;
  const middle = take(uncertain.middle.figures);
  if (!middle.known) return undefined;
  const values = middle.value as readonly number[];
  const each = values.map((_, index) =>
    uncertain.bounds((figures) => partOf(take(figures), index)),
  );
  const widest = each.find((bounds) => bounds !== undefined);
  if (!widest) return undefined;
  const ends = each.map((bounds, index) =>
    bounds ? endsOf(bounds) : ([values[index]!, values[index]!] as const),
  );
  return { bounds: ends, widest };
}

const partOf = (figure: Figure<unknown>, index: number): Figure<number> =>
  figure.known
    ? { known: true, value: (figure.value as readonly number[])[index]!, from: [] }
    : figure;

const endless = (value: number): number | 'endless' =>
  value === Number.POSITIVE_INFINITY ? 'endless' : value;

const endsOf = ({ low, high }: Bounds): NumberBounds => [endless(low), endless(high)];
