/**
 * A figure is a calculated value with the places of its inputs, or the reason why it is unknown.
 * Functions of figures give figures: if an input is unknown, so is the result, with the same
 * reason.
 */
import type { Field } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import { inLanguage, message } from '../words/message.ts';

/** One value of the plan that a figure needs and that is missing. */
export interface Need {
  /** The key that is missing, in the plan's words: `length`. */
  readonly key: string;
  /** What it belongs to, in the plan's words: `long-200`. */
  readonly of: string;
  readonly at: Place;
  /** What is given in its place and doesn't serve, and what else would; a text as `because` is. */
  readonly aside?: string;
}

export interface KnownFigure<T> {
  readonly known: true;
  readonly value: T;
  readonly from: readonly Place[];
  /** Measured (`measured` in the plan) instead of calculated. */
  readonly measured?: true;
}

export interface UnknownFigure {
  readonly known: false;
  readonly needs: readonly Need[];
  /**
   * Why it can't be calculated although nothing is missing: "endless", "no light in the shot". A
   * sentence, or a text of a table that `becauseOf` translates.
   */
  readonly because?: string;
  /** An input is invalid and has its own finding, so nothing more is said about this figure. */
  readonly silent?: true;
  /** The shot has no such thing ("the subject is not a film"): nobody misses it. Set by `isNo`. */
  readonly applies?: false;
}

export type Figure<T> = KnownFigure<T> | UnknownFigure;

export const known = <T>(value: T, from: readonly Place[] = []): KnownFigure<T> => ({
  known: true,
  value,
  from,
});

export const notKnown = (because: string): UnknownFigure => ({ known: false, needs: [], because });

export const silent: UnknownFigure = { known: false, needs: [], silent: true };

/** A field of an entry as a figure; `of` names the entry for "not known: needs `key` of …". */
export function figureOf<T>(field: Field<T>, of: string): Figure<T> {
  switch (field.state) {
    case 'known':
      return known(field.value, [field.at]);
    case 'invalid':
      return silent;
    case 'missing': {
      const key = field.at.path.filter((step) => typeof step === 'string').at(-1);
      return { known: false, needs: [{ key: String(key ?? of), of, at: field.at }] };
    }
  }
}

type Values<F extends readonly Figure<unknown>[]> = {
  [K in keyof F]: F[K] extends Figure<infer T> ? T : never;
};

/** The common reason of several unknown figures, with every needed value named once. */
export function unknownOf(figures: readonly Figure<unknown>[]): UnknownFigure {
  const unknown = figures.filter((figure): figure is UnknownFigure => !figure.known);
  if (unknown.some((figure) => figure.silent)) return silent;
  const needs = new Map<string, Need>();
  for (const figure of unknown)
    for (const need of figure.needs)
      needs.set(`${need.at.file} ${need.at.entry} ${need.at.path.join('.')}`, need);
  const told = unknown.find((figure) => figure.because);
  return {
    known: false,
    needs: [...needs.values()],
    ...(told?.because && { because: told.because }),
    // A figure with a missing input does apply to the shot.
    ...(told?.applies === false && needs.size === 0 && { applies: false }),
  };
}

/**
 * Calculates a figure from others. `compute` may return its own reason, an `UnknownFigure` made by
 * `notKnown`.
 */
export function derive<const F extends readonly Figure<unknown>[], T>(
  inputs: F,
  compute: (...values: Values<F>) => T | UnknownFigure,
): Figure<T> {
  for (const input of inputs) if (!input.known) return unknownOf(inputs);
  const sure = inputs as readonly KnownFigure<unknown>[];
  const value = applied(compute as (...values: unknown[]) => T | UnknownFigure, sure);
  if (isUnknown(value)) return value;
  return new Derived(value, sure);
}

/** Most figures follow from one to three others: those need no list of their values. */
function applied<R>(
  compute: (...values: unknown[]) => R,
  inputs: readonly KnownFigure<unknown>[],
): R {
  const [a, b, c] = inputs;
  switch (inputs.length) {
    case 1:
      return compute(a!.value);
    case 2:
      return compute(a!.value, b!.value);
    case 3:
      return compute(a!.value, b!.value, c!.value);
    default:
      return compute(...inputs.map(({ value }) => value));
  }
}

/**
 * A figure calculated from others. The places of its inputs are gathered only on request, since
 * few of thousands of figures are asked for them.
 */
class Derived<T> implements KnownFigure<T> {
  readonly known = true as const;
  readonly value: T;
  #inputs: readonly KnownFigure<unknown>[] | null;
  #from: readonly Place[] = [];

  constructor(value: T, inputs: readonly KnownFigure<unknown>[]) {
    this.value = value;
    this.#inputs = inputs;
  }

  get from(): readonly Place[] {
    if (this.#inputs) {
      const places = new Set<Place>();
      gather(this.#inputs, places, new Set());
      this.#from = [...places];
      this.#inputs = null;
    }
    return this.#from;
  }

  /** The inputs that the places are still to be gathered from. */
  static inputsOf(figure: KnownFigure<unknown>): readonly KnownFigure<unknown>[] | null {
    return figure instanceof Derived ? figure.#inputs : null;
  }
}

/** All places below `figures`, each figure visited once. */
function gather(
  figures: readonly KnownFigure<unknown>[],
  places: Set<Place>,
  seen: Set<KnownFigure<unknown>>,
): void {
  for (const figure of figures) {
    if (seen.has(figure)) continue;
    seen.add(figure);
    const inputs = Derived.inputsOf(figure);
    if (inputs) gather(inputs, places, seen);
    else for (const place of figure.from) places.add(place);
  }
}

/** Another value that follows from the same inputs. */
export const withValue = <T>(figure: KnownFigure<unknown>, value: T): KnownFigure<T> =>
  new Derived(value, [figure]);

const isUnknown = (value: unknown): value is UnknownFigure =>
  typeof value === 'object' && value !== null && 'known' in value && value.known === false;

/** The figure's value, or undefined where it is not known. */
export const valueIn = <T>(figure: Figure<T>): T | undefined =>
  figure.known ? figure.value : undefined;

/** The reason in the language in force; null: there is none but what is missing. */
export const becauseOf = ({ because }: UnknownFigure): string | null =>
  because === undefined ? null : inLanguage(because);

/** "needs `length` of long-200", or the reason; null where a finding of its own says it. */
export function reasonOf(figure: UnknownFigure): string | null {
  if (figure.silent) return null;
  if (figure.needs.length > 0) {
    const needs = message`needs ${figure.needs.map((need) => message`\`${need.key}\` of ${need.of}`).join(', ')}`;
    const aside = asideOf(figure);
    return aside === null ? needs : `${needs}; ${aside}`;
  }
  return becauseOf(figure);
}

/** What is said beside what is missing, in the language in force; null: nothing. */
export function asideOf({ needs }: UnknownFigure): string | null {
  const aside = needs.find((need) => need.aside !== undefined)?.aside;
  return aside === undefined ? null : inLanguage(aside);
}
