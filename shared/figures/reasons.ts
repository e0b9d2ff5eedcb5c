/**
 * Why figures are not known, by their names, as the JSON has it. Which of them do not apply at all
 * ("the subject is not a film") is marked beside it, where JSON doesn't see it: nobody misses those.
 */
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

export function reasonsOf(reasons: readonly Reason[]): Reasons {
  const without = reasons.flatMap(({ figure, applies }) => (applies ? [] : [figure]));
  return {
    ...Object.fromEntries(reasons.map(({ figure, why }) => [figure, why])),
    ...(without.length > 0 && { [NOT_APPLICABLE]: new Set(without) }),
  };
}

/** Whether `figure` has a reason, and it is not that it does not apply. */
export const isMissed = (reasons: Reasons, figure: string): boolean =>
  reasons[figure] !== undefined && !doesNotApply(reasons, figure);

/** Whether the shot has no such thing. */
export const doesNotApply = (reasons: Reasons, figure: string): boolean =>
  reasons[NOT_APPLICABLE]?.has(figure) ?? false;
