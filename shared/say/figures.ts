/** Figures in the words that hints and hovers share. */

import { message } from '../words/message.ts';
import type { Say } from './say.ts';

/** Less than this nobody sees or can set: the exposure is correct. */
const RIGHT_WITHIN_STOPS = 0.05;

/** What a figure was found to be, and that it was measured where it was. */
export const asFound = ({ measured }: { readonly measured?: true }, words: string): string =>
  measured ? message`${words} (measured)` : words;

/** "24 × 13.5 mm". */
export const sizeWords = ([width, height]: readonly [number, number], say: Say): string =>
  say.size(width, height);

/** "1.4 stops under", "1.2 stops over", "exposure correct". */
export const exposureWords = (stops: number, say: Say): string =>
  isRight(stops) ? message`exposure correct` : offWords(stops, say);

/** "1.4 stops under", "correct": after the word. */
export const exposureError = (stops: number, say: Say): string =>
  isRight(stops) ? message`correct` : offWords(stops, say);

function offWords(stops: number, say: Say): string {
  const off = say.stopsSigned(stops).slice(1);
  return stops < 0 ? message`${off} under` : message`${off} over`;
}

/** "2.2 under to 0.3 over", "1.2 to 2.2" on one side: behind the words of an exposure. */
export function exposureEnds(
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
  say: Say,
): string {
  const [words, from, to] = [value, low, high].map((stops) => exposureError(stops, say));
  if (from === words && to === words) return '';
  const plain = (stops: number) => /[\d.]+/.exec(say.stopsSigned(stops))![0];
  const sided = (stops: number) =>
    isRight(stops)
      ? message`correct`
      : stops < 0
        ? message`${plain(stops)} under`
        : message`${plain(stops)} over`;
  const sides = [value, low, high].map((stops) => (isRight(stops) ? 0 : Math.sign(stops)));
  if (sides[0] !== 0 && sides.every((side) => side === sides[0]))
    return high < 0
      ? message`${plain(high)} to ${plain(low)}`
      : message`${plain(low)} to ${plain(high)}`;
  return message`${sided(low)} to ${sided(high)}`;
}

const isRight = (stops: number): boolean => Math.abs(stops) < RIGHT_WITHIN_STOPS;

/** "infinity to 1x", "0.48x to 1.24x"; "0.4x only" for a lens that has no ring to turn. */
export function reachWords([least, most]: readonly [number, number], say: Say): string {
  const words = (m: number) => (m === 0 ? message`infinity` : say.magnification(m));
  return least === most
    ? message`${words(least)} only`
    : message`${words(least)} to ${words(most)}`;
}

/** Depth there and needed, with digits enough to tell them apart; either may be endless. */
export function depthPair(there: number, needed: number, say: Say): [string, string] {
  return Number.isFinite(there) && Number.isFinite(needed)
    ? say.lengths2(there, needed)
    : [say.length(there), say.length(needed)];
}
