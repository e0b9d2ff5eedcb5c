/** Reads the text that a reviewer's page gives. It may come from anybody. */
import { NotReadable, Reading } from './read-json.ts';
import {
  documentOf,
  LONGEST_NOTE,
  LONGEST_PATH,
  LONGEST_VALUE,
  MOST_ENTRIES,
  nameOf,
  timeOf,
} from './read-parts.ts';
import type { NewComment, Review } from './review.ts';

type ReadReview =
  | { readonly ok: true; readonly review: Review }
  | {
      readonly ok: false;
      /** For people: "comments[2].says needs text, not 7". */
      readonly why: string;
    };

export function readReview(text: string): ReadReview {
  try {
    return { ok: true, review: reviewOf(documentOf(text, 'review')) };
  } catch (cause) {
    if (cause instanceof NotReadable) return { ok: false, why: cause.message };
    throw cause;
  }
}

function reviewOf(value: unknown): Review {
  const top = new Reading(value, '');
  const unknown: string[] = [];
  const plan = top.text('plan', LONGEST_PATH);
  timeOf(top, 'saved');
  const comments = top.list('comments', MOST_ENTRIES).map((one, index): NewComment => {
    const entry = new Reading(one, `comments[${index + 1}]`);
    const comment = {
      shot: nameOf(entry, 'shot'),
      time: timeOf(entry, 'time'),
      by: entry.maybeText('by', LONGEST_VALUE),
      says: entry.text('says', LONGEST_NOTE),
    };
    unknown.push(...entry.unknown());
    return comment;
  });
  return { plan, comments, unknown: [...unknown, ...top.unknown()] };
}
