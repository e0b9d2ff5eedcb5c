/** A text that comes back, from a sheet or from a review, by its first line. */
import { type Brought, bringBack } from './bring.ts';
import { bringReview } from './bring-review.ts';
import type { Day } from './day.ts';
import { readDay } from './read.ts';
import { kindOfText, type Unreadable } from './read-parts.ts';
import { readReview } from './read-review.ts';

type ReadBack =
  | {
      readonly ok: true;
      /** As `bringBack`. */
      readonly lay: (text: string, name: string) => Brought | null;
      /** Null: it is a review. */
      readonly day: Day | null;
    }
  | Unreadable;

export function readBack(given: string): ReadBack {
  if (kindOfText(given) === 'review') {
    const read = readReview(given);
    return read.ok
      ? { ok: true, day: null, lay: (text, name) => bringReview(read.review, text, name) }
      : read;
  }
  const read = readDay(given);
  return read.ok
    ? { ok: true, day: read.day, lay: (text, name) => bringBack(read.day, text, name) }
    : read;
}
