/**
 * The declaration of a figure: all that is said about it in one place. Its key in the JSON is its key
 * in the catalogue; JSON, text, comparison and the page shared/report/JSON.md follow from it. What it
 * is, in a sentence for that page, stands in about.ts.
 */
import { derive, type Figure, type KnownFigure, type UnknownFigure } from '../figure.ts';
import type { Owner } from '../not-applicable.ts';
import type { ShotFigures } from '../shot-figures.ts';
import type { Shape, ShapeOf } from './shape.ts';

interface Declared<V> {
  /** What people call it, marked by `later`; its unit stands behind the number. */
  readonly label: string;
  readonly is: ShapeOf<V>;
  /** What alone has it: of all else it does not apply. */
  readonly only?: Owner;
  /** The rules that decide by it. */
  readonly rules?: readonly string[];
  readonly review?: Review;
  /** A list of many, for programs that ask: a comparison of two plans leaves it out. */
  readonly isLong?: true;
}

/** A reviewer of a change decides by it. */
interface Review {
  /** Where it stands among the others, by its weight: what is lower comes first. */
  readonly place: number;
  /** What a review calls it where it has another name for it, marked by `later`. */
  readonly label?: string;
}

/** How a figure is told, whatever it is taken from. */
export interface Declaration extends Omit<Declared<unknown>, 'is'> {
  readonly is: Shape;
}

/** What a row of a report needs to know of a figure, or of some under one key. */
export type Told =
  | { readonly kind: 'figure'; readonly label: string; readonly is: Shape }
  | { readonly kind: 'group'; readonly label: string; readonly parts: GroupEntry['parts'] };

interface FigureEntry<K extends keyof ShotFigures = keyof ShotFigures> extends Declaration {
  readonly kind: 'figure';
  /** What it is taken from. */
  readonly from: readonly K[];
  readonly of: (figures: ShotFigures) => Figure<unknown>;
}

/** A part of a group: `label` alone ("depth needed"), `short` behind the group's ("needed"). */
interface GroupPart extends Declaration {
  readonly short: string;
}

/** Figures under one key, each known or not by itself. */
export interface GroupEntry<K extends keyof ShotFigures = keyof ShotFigures> {
  readonly kind: 'group';
  readonly from: readonly K[];
  readonly label: string;
  readonly parts: Readonly<Record<string, GroupPart>>;
  readonly of: (figures: ShotFigures) => Readonly<Record<string, Figure<unknown>>>;
}

export type Entry = FigureEntry | GroupEntry;

type ValueOf<F> = F extends KnownFigure<infer V> ? V : never;

type Of<K extends keyof ShotFigures> = ValueOf<ShotFigures[K]>;

type Single = {
  [K in keyof ShotFigures]: ShotFigures[K] extends Figure<unknown> ? K : never;
}[keyof ShotFigures];

/** A figure as it stands. */
export const figure = <K extends Single>(from: K, declared: Declared<Of<K>>): FigureEntry<K> => ({
  ...(declared as unknown as Declaration),
  kind: 'figure',
  from: [from],
  of: (figures) => figures[from],
});

/**
 * What `take` makes of a figure: one of its parts, or another unit. In two calls, so that the
 * declaration is held to what `take` gives.
 */
export const figureIn = <K extends Single, R>(from: K, take: (value: Of<K>) => R) =>
  figureBy([from], take as (...values: OfEach<readonly [K]>) => R);

/** What `take` makes of several figures. */
export const figureBy =
  <const S extends readonly Single[], R>(from: S, take: (...values: OfEach<S>) => R) =>
  (declared: Declared<Exclude<R, UnknownFigure>>): FigureEntry<S[number]> => ({
    ...(declared as unknown as Declaration),
    kind: 'figure',
    from,
    of: (figures) =>
      derive(
        from.map((one) => figures[one] as Figure<unknown>),
        (...values) => take(...(values as unknown as OfEach<S>)),
      ),
  });

type OfEach<S extends readonly Single[]> = { readonly [I in keyof S]: Of<S[I]> };

type Groups = Exclude<keyof ShotFigures, Single>;

/** A record of figures, with a declaration for each of them. */
export const group = <K extends Groups>(
  from: K,
  label: string,
  parts: {
    readonly [P in keyof ShotFigures[K]]: Declared<ValueOf<ShotFigures[K][P]>> & {
      readonly short: string;
    };
  },
): GroupEntry<K> => ({
  kind: 'group',
  from: [from],
  label,
  parts: parts as unknown as GroupEntry<K>['parts'],
  of: (figures) => figures[from] as unknown as Readonly<Record<string, Figure<unknown>>>,
});
