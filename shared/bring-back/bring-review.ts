/** Lays a reviewer's comments into the text of the plan. What was changed there meanwhile is left. */
import { message } from '../words/message.ts';
import type { Brought } from './bring.ts';
import { PlanText } from './plan-text.ts';
import type { NewComment, Review } from './review.ts';
import { Told } from './told.ts';
import { flowMap, freeText } from './write.ts';

/**
 * Bringing the same review again changes nothing.
 *
 * @param name of the plan's file, without its folders
 * @returns null where the plan's text has errors that leave open where something belongs
 */
export function bringReview(review: Review, text: string, name: string): Brought | null {
  const plan = new PlanText(text);
  if (!plan.isWhole) return null;
  const told = new Told();
  for (const where of review.unknown)
    told.leave(message`${where} is not known here; it is left out.`);
  if (review.plan !== name)
    told.leave(
      message`The review is of ${review.plan}; the plan is ${name}. Check that they belong together.`,
    );
  for (const comment of review.comments) bringComment(comment, plan, told);
  return { text: plan.text(), done: told.done, kept: told.kept, left: told.left };
}

function bringComment(comment: NewComment, plan: PlanText, told: Told): void {
  const { shot, time, by, says } = comment;
  const of = by === null ? message`A comment on ${shot}` : message`A comment by ${by} on ${shot}`;
  if (!plan.has('shots', shot)) {
    told.leave(message`${of}: the plan has no such shot.`);
    return;
  }
  const path = ['shots', shot, 'review'];
  const list = plan.at(...path);
  if (list !== null && list.kind !== 'seq') {
    told.leave(message`${of}: \`review\` of ${shot} is no list. It is left as it is.`);
    return;
  }
  const count = list?.items.length ?? 0;
  const there = matchOf(comment, plan, count);
  if (there !== null) {
    if (there !== says)
      told.leave(message`${of} says something else in the plan. The plan is left as it is.`);
    return;
  }
  const written = flowMap([
    ...(by === null ? [] : [['by', freeText(by)] as const]),
    ['time', time],
    ['says', freeText(says)],
  ]);
  // A list that has items takes one more. A shot in braces takes no list in lines.
  const isWritten =
    count > 0
      ? plan.set([...path, count], written)
      : plan.set(path, `- ${written}\n`) || plan.set(path, `[${written}]`);
  if (isWritten) told.bring(message`${of}: added.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

/**
 * What the plan has of this comment; null: nothing. One is known again by its time, with who wrote it
 * or what it says; one that was typed into the plan without a time, by both.
 */
function matchOf(
  { shot, time, by, says }: NewComment,
  plan: PlanText,
  count: number,
): string | null {
  for (let index = 0; index < count; index++) {
    const read = (key: string) => plan.scalar('shots', shot, 'review', index, key);
    const [isBy, isSame] = [read('by') === by, read('says') === says];
    const isThere =
      read('time') === null ? isBy && isSame : read('time') === time && (isBy || isSame);
    if (isThere) return read('says') ?? '';
  }
  return null;
}
