/** Comments of a review, as sheet and comparison show them. */

import { type Inline, type List, list, strong } from '../api/document.ts';
import type { Comment } from '../api/sheet.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { ReviewComment } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';

/** The rule that reports what is listed here anyway. */
export const REVIEW_RULE = 'comment-unanswered';

/** Those that say something; what can't be read has a finding of its own. */
export function commentsOf(
  review: Field<readonly Field<ReviewComment>[]> | undefined,
): readonly Comment[] {
  if (!review || !isKnown(review)) return [];
  return review.value.flatMap((comment) => {
    if (!isKnown(comment)) return [];
    const { says, by, time, answer } = comment.value;
    return isKnown(says)
      ? [
          {
            says: says.value,
            by: ifKnown(by) ?? null,
            date: dateOf(ifKnown(time)),
            answer: ifKnown(answer) ?? null,
          },
        ]
      : [];
  });
}

/** A time may be any text; the day of one by ISO 8601 says enough. */
const dateOf = (time: string | undefined): string | null =>
  time === undefined ? null : (/^\d{4}-\d\d-\d\d(?=T)/.exec(time)?.[0] ?? time);

export const commentList = (comments: readonly Comment[]): List =>
  list(
    comments.map(({ says, by, date, answer }) => {
      const about = [by, date].filter((one) => one !== null).join(', ');
      const said: readonly Inline[] = about === '' ? [says] : [strong(about), ': ', says];
      return {
        text: said,
        more: [answer === null ? message`No answer yet.` : [strong(message`Answer`), ': ', answer]],
      };
    }),
  );
