import { isKnown } from '../plan/field.ts';
import type { ReviewComment } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly says: string;
  /** null: not written. */
  readonly by: string | null;
}

/** Characters of a comment that are told; the plan has the rest on the same line. */
const MOST_SAID = 60;

export const commentUnanswered: ShotRule<Facts> = {
  name: 'comment-unanswered',
  severity: 'note',
  isStatement: true,
  docs: {
    when: 'a comment of a review has no `answer` yet.',
    why: 'Whoever reviewed the plan waits for an answer. Without one nobody knows whether it was read.',
    remedy:
      'Change the shot, or leave it as it is. Then write what was decided under `answer`; the comment stays in the plan.',
    bad: [
      {
        says: 'a comment without an answer',
        change: {
          'shots/frost/review': '[{ by: rv, says: Could this be wider? }]',
        },
      },
    ],
    good: [
      {
        says: 'a comment with its answer',
        change: {
          'shots/frost/review': '[{ by: rv, says: Could this be wider?, answer: No room for it. }]',
        },
      },
    ],
  },
  check({ bench }) {
    const { review } = bench.fields;
    if (!isKnown(review)) return [];
    return review.value.flatMap((comment) => {
      if (!isKnown(comment)) return [];
      const { says, by, answer }: ReviewComment = comment.value;
      if (!isKnown(says) || answer.state !== 'missing') return [];
      return [{ at: says.at, facts: { says: says.value, by: isKnown(by) ? by.value : null } }];
    });
  },
  words: ({ says, by }) => {
    const text = asSentence(shortened(says));
    return {
      what:
        by === null
          ? message`A reviewer comments: ${text}`
          : message`${shortened(by)} comments: ${text}`,
      why: message`The comment has no answer yet.`,
    };
  },
};

const asSentence = (text: string): string => (/[.?!…]$/.test(text) ? text : `${text}.`);

/** In one line, and cut at a word. */
function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  if (line.length <= MOST_SAID) return line;
  const cut = line.slice(0, MOST_SAID);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), MOST_SAID / 2)).trimEnd()}…`;
}
