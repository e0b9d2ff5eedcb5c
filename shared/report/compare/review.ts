/** What the page's script has to know to take a reviewer's comments: names and words. */
import { message } from '../../words/message.ts';
import { markOf } from '../mark.ts';

/** How comments look while they are written; on paper they are text. */
export const REVIEW_STYLE = `
.review ol > li { margin-bottom: .6rem; }
.review textarea {
  font: inherit; color: inherit; background: var(--paper); border: 1px solid var(--faint); border-radius: 3px;
  width: 100%; padding: .4rem .6rem; field-sizing: content; min-height: 4.5rem;
}
.filling .review .box { margin-bottom: 0; }
.review .box > span { margin-bottom: .25rem; }
.filling .review [hidden] { display: none; }
.same { border-bottom: 1px solid var(--rule); padding: .6rem 0; }
.same .limits { margin-bottom: .5rem; }
@media print {
  .review button, .review li:has(textarea:placeholder-shown) { display: none; }
  .review > .note { display: none; }
  .review textarea { border: 0; border-left: 4px solid var(--ink); min-height: 0; padding: 0 3mm; resize: none; }
}
`;

export interface ReviewData {
  /** The plan's file, without its folder. */
  readonly plan: string;
  /** Of what is compared; another comparison has another. */
  readonly mark: string;
  readonly words: ReviewWords;
}

type ReviewWords = ReturnType<typeof reviewWords>;

/** @param compared all that the page says */
export const reviewData = (plan: string, compared: unknown): ReviewData => ({
  plan,
  mark: markOf(JSON.stringify([plan, compared])),
  words: reviewWords(),
});

/** `{0}` stands where the script puts a name or a number. */
const reviewWords = () => {
  const first = '{0}';
  return {
    review: message`Review`,
    add: message`Comment on ${first}`,
    comment: message`Comment`,
    remove: message`Remove comment`,
    sure: message`Tap again to remove`,
    none: message`No comments yet`,
    one: message`1 comment`,
    many: message`${first} comments`,
    save: message`Save`,
    by: message`Your name or initials`,
    out: message`Save the review`,
    outAbout: message`Bring this text into the plan with "lamella bring-back".`,
    text: message`Text of the review`,
    download: message`Download`,
    copy: message`Copy`,
    copied: message`The text was copied.`,
    notCopied: message`The browser did not copy it. Select the text and copy it by hand.`,
    close: message`Close`,
    clear: message`Remove all comments`,
    clearSure: message`Tap again to remove all comments`,
    notKept: message`This browser does not keep your comments. Save the review before you close the page.`,
    full: message`The browser's storage is full. Save the review before you close the page.`,
    broken: message`Some entries can't be read. They are kept as they are:`,
    other: message`This browser also holds comments on another comparison of this plan. They are not shown here.`,
    otherOut: message`Save those comments`,
    tooMany: message`No more than ${first} comments a shot are kept here.`,
  };
};
