/** Figures in words, for settings, drawings and lists: known, not known and why, or not at all. */

import type { Drawing } from '../../api/drawing.ts';
import { boundsOf } from '../../figures/bounds-json.ts';
import { boundsWords } from '../../figures/catalogue/say-figure.ts';
import { size } from '../../figures/catalogue/shape.ts';
import { derive, type Figure, reasonOf, type UnknownFigure } from '../../figures/figure.ts';
import type { Pick as PickFigure, UncertainShot } from '../../figures/uncertain.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import { aroundWords, inBrackets } from '../../say/around.ts';
import { exposureEnds, exposureWords } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import { anyOf } from '../../words/listed.ts';
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

/** Both ends of a figure: of what gives a margin, the worse one counts. null: not known. */
export function endsOf(
  { uncertain, figures }: SaidShot,
  pick: PickFigure,
): { readonly low: number; readonly high: number } | null {
  const middle = pick(figures);
  if (!middle.known) return null;
  return uncertain.bounds(pick) ?? { low: middle.value, high: middle.value };
}

/** Less than this no camera corrects, stops. */
const SMALL_STOPS = 0.15;

/** "0.3 stops over (0.1 to 0.6)", "about right (may be 0.3 stops over)"; null: not known. */
export function exposureSaid(shot: SaidShot): string | null {
  const { figures, say } = shot;
  const error = figures.exposureErrorStops;
  const ends = endsOf(shot, ({ exposureErrorStops }) => exposureErrorStops);
  if (!error.known || !ends) return null;
  if (Math.abs(error.value) >= SMALL_STOPS) {
    const rounded = { low: toTenth(ends.low), high: toTenth(ends.high) };
    const middle = toTenth(error.value);
    return `${exposureWords(middle, say)}${inBrackets(exposureEnds(middle, rounded, say))}`;
  }
  const may = [ends.low, ends.high]
    .filter((end) => Math.abs(end) >= SMALL_STOPS)
    .map((end) => exposureWords(toTenth(end), say));
  return may.length === 0 ? message`about right` : message`about right (may be ${anyOf(may)})`;
}

/** A tenth of a stop is as fine as anything is set. */
export const toTenth = (stops: number): number => Math.round(stops * 10) / 10;

/** Longer than this is set to whole millimetres. */
const COARSE_MM = 20;

/** A length that somebody sets with a ruler: 73 mm, not 73.4. */
export const settable = (mm: number, { say }: SaidShot, round = Math.round): string =>
  say.length(say.lengths === 'mm' && mm >= COARSE_MM && mm < 1000 ? round(mm) : mm);

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

interface SureTilts {
  readonly leastRad: number;
  readonly greatestRad: number;
  /** To a tenth of a degree, on the safe side. */
  readonly words: readonly [least: string, greatest: string];
}

/** The tilts that are right whatever the bounds are; null: none is, or not known. */
export function sureTilts(shot: SaidShot): SureTilts | null {
  const least = endsOf(shot, ({ tiltWindow }) => derive([tiltWindow], (of) => of.leastRad));
  const most = endsOf(shot, ({ tiltWindow }) => derive([tiltWindow], (of) => of.greatestRad));
  if (!least || !most || least.high >= most.low) return null;
  const degrees = (radians: number, round: (value: number) => number): string =>
    `${round(((radians * 180) / Math.PI) * 10) / 10}°`;
  return {
    leastRad: least.high,
    greatestRad: most.low,
    words: [degrees(least.high - 1e-9, Math.ceil), degrees(most.low + 1e-9, Math.floor)],
  };
}
