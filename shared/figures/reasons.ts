/**
 * Why figures are not known, by their names, as the JSON has it. Which of them do not apply at all
 * ("the subject is not a film") is marked beside it, where JSON doesn't see it: nobody misses those.
 */
import { inLanguage, later } from '../words/message.ts';
import { reasonOf, type UnknownFigure } from './figure.ts';

const NOT_APPLICABLE = Symbol('figures that do not apply');

export interface Reasons {
  readonly [figure: string]: string;
  readonly [NOT_APPLICABLE]?: ReadonlySet<string>;
}

export interface Reason {
  readonly figure: string;
  readonly why: string;
  readonly applies: boolean;
}

/** Said where an input is invalid: the finding at the input says the rest. */
const INVALID_INPUT = later`it depends on an invalid entry`;

export const reasonFor = (name: string, figure: UnknownFigure): Reason => ({
  figure: name,
  why: reasonOf(figure) ?? inLanguage(INVALID_INPUT),
  applies: figure.applies !== false,
});

export function reasonsOf(reasons: readonly Reason[]): Reasons {
  const why = Object.fromEntries(reasons.map((one) => [one.figure, one.why]));
  const without = reasons.flatMap(({ figure, applies }) => (applies ? [] : [figure]));
  // Not enumerable: what lists or compares the reasons sees reasons alone.
  return Object.defineProperty(why, NOT_APPLICABLE, { value: new Set(without) });
}

/** Whether `figure` has a reason, and it is not that it does not apply. */
export const isMissed = (reasons: Reasons, figure: string): boolean =>
  reasons[figure] !== undefined && !doesNotApply(reasons, figure);

/** Whether the shot has no such thing. */
export const doesNotApply = (reasons: Reasons, figure: string): boolean =>
  reasons[NOT_APPLICABLE]?.has(figure) ?? false;
