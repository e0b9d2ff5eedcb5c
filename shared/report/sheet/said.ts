/** Figures in words, for settings, drawings and lists: known, not known and why, or not at all. */

import type { Drawing } from '../../api/drawing.ts';
import { boundsOf } from '../../figures/bounds-json.ts';
import { boundsWords } from '../../figures/catalogue/say-figure.ts';
import { size } from '../../figures/catalogue/shape.ts';
import { type Figure, reasonOf, type UnknownFigure } from '../../figures/figure.ts';
import type { Pick as PickFigure, UncertainShot } from '../../figures/uncertain.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import { aroundWords, inBrackets } from '../../say/around.ts';
import { exposureEnds } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';

/** A shot with the reader's units. */
export interface SaidShot extends ShotView {
  readonly say: Say;
  readonly uncertain: UncertainShot;
}

/** " (24 to 27)" behind a figure that is not known exactly; nothing where its digits hide that. */
export function around(
  { uncertain, figures }: SaidShot,
  pick: PickFigure,
  print: (value: number) => string,
): string {
  const middle = pick(figures);
  const bounds = middle.known ? uncertain.bounds(pick) : undefined;
  return middle.known && bounds ? inBrackets(aroundWords(middle.value, bounds, print)) : '';
}

/** The same of an exposure, by its sides. */
export function aroundExposure({ uncertain, figures, say }: SaidShot): string {
  const middle = figures.exposureErrorStops;
  const bounds = middle.known
    ? uncertain.bounds(({ exposureErrorStops }) => exposureErrorStops)
    : undefined;
  return middle.known && bounds ? inBrackets(exposureEnds(middle.value, bounds, say)) : '';
}

/** The same of the field's width and height. */
export function aroundField({ uncertain, figures, say }: SaidShot): string {
  const { fieldMm } = figures;
  const shape = size('length');
  const found = fieldMm.known ? boundsOf(uncertain, shape, (of) => of.fieldMm) : undefined;
  return fieldMm.known && found
    ? inBrackets(boundsWords(shape, fieldMm.value, found.bounds, say))
    : '';
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
