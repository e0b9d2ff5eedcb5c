/** Figures in words, for settings, drawings and lists: known, not known and why, or not at all. */
import { type Figure, reasonOf, type UnknownFigure } from '../../figures/figure.ts';
import { doesNotApply } from '../../figures/not-applicable.ts';
import type { Say } from '../../rules/say.ts';
import type { ShotView } from '../../rules/shot-rule.ts';

/** A shot with the reader's units. */
export interface SaidShot extends ShotView {
  readonly say: Say;
}

/** "not known: needs `length` of long-200"; null where the figure has no meaning for this shot. */
export function notKnownWords(figures: readonly Figure<unknown>[]): string | null {
  const unknown = figures.filter((figure): figure is UnknownFigure => !figure.known);
  const telling = unknown.filter(({ because }) => !doesNotApply(because));
  if (telling.length < unknown.length) return null;
  const reasons = [...new Set(telling.map((figure) => reasonOf(figure)).filter((one) => one))];
  return reasons.length === 0
    ? 'Not known: an entry that it follows from has a finding of its own.'
    : `Not known: ${reasons.join('; ')}.`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a, b and c" */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
