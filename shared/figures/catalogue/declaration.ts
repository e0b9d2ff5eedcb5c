/**
 * The declaration of a figure: all that is said about it in one place. Its key in the JSON is its key
 * in the catalogue; JSON, text, comparison and the page shared/report/JSON.md follow from it.
 */
import { derive, type Figure, type KnownFigure, type UnknownFigure } from '../figure.ts';
import type { Owner } from '../not-applicable.ts';
import type { ShotFigures } from '../shot-figures.ts';
import type { Shape, ShapeOf } from './shape.ts';

export interface Declared<V> {
  /** What people call it, marked by `later`; its unit stands behind the number. */
  readonly label: string;
  readonly is: ShapeOf<V>;
  /** What it is, in the page of the JSON. */
  readonly about: string;
  /** What alone has it: of all else it does not apply. */
  readonly only?: Owner;
  /** The rules that decide by it. */
  readonly rules?: readonly string[];
  readonly review?: Review;
  /** A list of many, for programs that ask: a comparison of two plans leaves it out. */
  readonly isLong?: true;
}

/** A reviewer of a change decides by it. */
export interface Review {
  /** Where it stands among the others, by its weight: what is lower comes first. */
  readonly place: number;
  /** What a review calls it, marked by `later`. */
  readonly label: string;
}

/** How a figure is told, whatever it is taken from. */
export interface Declaration extends Omit<Declared<unknown>, 'is'> {
  readonly is: Shape;
}

/** What a row of a report needs to know of a figure, or of some under one key. */
export type Told =
  | { readonly kind: 'figure'; readonly label: string; readonly is: Shape }
  | { readonly kind: 'group'; readonly label: string; readonly parts: GroupEntry['parts'] };

export interface FigureEntry<K extends keyof ShotFigures = keyof ShotFigures> extends Declaration {
  readonly kind: 'figure';
  /** What it is taken from. */
  readonly from: K;
  readonly of: (figures: ShotFigures) => Figure<unknown>;
}

/** A part of a group: `label` alone ("depth needed"), `short` behind the group's ("needed"). */
export interface GroupPart extends Declaration {
  readonly short: string;
}

/** Figures under one key, each known or not by itself. */
export interface GroupEntry<K extends keyof ShotFigures = keyof ShotFigures> {
  readonly kind: 'group';
  readonly from: K;
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
  from,
  of: (figures) => figures[from],
});

/**
 * What `take` makes of a figure: one of its parts, or another unit. In two calls, so that the
 * declaration is held to what `take` gives.
 */
export const figureIn =
  <K extends Single, R>(from: K, take: (value: Of<K>) => R) =>
  (declared: Declared<Exclude<R, UnknownFigure>>): FigureEntry<K> => ({
    ...(declared as unknown as Declaration),
    kind: 'figure',
    from,
    of: (figures) => derive([figures[from] as Figure<Of<K>>], (value) => take(value as Of<K>)),
  });

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
  from,
  label,
  parts: parts as unknown as GroupEntry<K>['parts'],
  of: (figures) => figures[from] as unknown as Readonly<Record<string, Figure<unknown>>>,
});
