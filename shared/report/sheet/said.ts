/** Figures in words, for settings, drawings and lists: known, not known and why, or not at all. */

import type { Drawing } from '../../api/drawing.ts';
import { type Figure, reasonOf, type UnknownFigure } from '../../figures/figure.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';

/** A shot with the reader's units. */
export interface SaidShot extends ShotView {
  readonly say: Say;
}

/**
 * "Not known: needs `length` of long-200."; null where the figure has no meaning for this shot.
 * @param what "Exposure", where the sentence says what is not known
 */
export function notKnownWords(figures: readonly Figure<unknown>[], what?: string): string | null {
  const unknown = figures.filter((figure): figure is UnknownFigure => !figure.known);
  const telling = unknown.filter(({ applies }) => applies !== false);
  if (telling.length < unknown.length) return null;
  const reasons = [...new Set(telling.map((figure) => reasonOf(figure)).filter((one) => one))];
  const why = reasons.length === 0 ? message`depends on an invalid entry` : reasons.join('; ');
  return what === undefined ? message`Unknown: ${why}.` : message`${what} unknown: ${why}.`;
}

/** A drawing that there is none of, with why; null where it has no meaning for this shot. */
export function undrawn(
  drawing: Pick<Drawing, 'id' | 'title' | 'key'>,
  figures: readonly Figure<unknown>[],
): Drawing | null {
  const words = notKnownWords(figures);
  return words === null ? null : { ...drawing, words, picture: null };
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
