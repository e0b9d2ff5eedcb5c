/** Reads the text that a reviewer's page gives. It may come from anybody. */
import { type Faults, Reading } from './read-json.ts';
import {
  LONGEST_NOTE,
  LONGEST_PATH,
  LONGEST_VALUE,
  MOST_ENTRIES,
  nameOf,
  readDocument,
  timeOf,
  type Unreadable,
} from './read-parts.ts';
import type { NewComment, Review } from './review.ts';

type ReadReview = { readonly ok: true; readonly review: Review } | Unreadable;

export function readReview(text: string): ReadReview {
  const read = readDocument(text, 'review', reviewOf);
  return read.ok ? { ok: true, review: read.made } : read;
}

function reviewOf(value: unknown, faults: Faults): Review {
  const top = new Reading(value, '');
  const unknown: string[] = [];
  const plan = faults.tried(() => top.text('plan', LONGEST_PATH)) ?? '';
  faults.tried(() => timeOf(top, 'saved'));
  const comments = top.list('comments', MOST_ENTRIES).flatMap((one, index): NewComment[] => {
    const made = faults.tried(() => {
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
    return made === undefined ? [] : [made];
  });
  return { plan, comments, unknown: [...unknown, ...top.unknown()] };
}
