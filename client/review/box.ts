/// <reference lib="dom" />
/** The comments on one shot, each in a box of its own. */
import { button, filled, make, sureButton } from '../fill/dom.ts';
import type { Comments } from './comments.ts';

/** As many as anybody reads of one shot. */
const MOST_COMMENTS = 20;
/** Characters that are read of one when it is brought back. */
const LONGEST = 2000;

/** @returns brings the boxes up to what is kept */
export function boxesOf(comments: Comments, shot: string, section: Element): () => void {
  const { words } = comments.data;
  const list = make('ol');
  const cards = new Map<number, { card: HTMLLIElement; text: HTMLTextAreaElement }>();
  const most = make('p', { class: 'note', hidden: true }, filled(words.tooMany, MOST_COMMENTS));
  const add = button(filled(words.add, shot), () => {
    const number = comments.add(shot);
    update();
    cards.get(number)?.text.focus();
  });
  section.append(make('div', { class: 'review' }, list, add, most));

  const cardOf = (number: number) => {
    // By the placeholder the style knows that nothing was written.
    const text = make('textarea', { rows: 3, maxlength: LONGEST, placeholder: ' ' });
    text.addEventListener('input', () => comments.change(shot, number, text.value));
    const remove = sureButton(words.remove, words.sure, () => comments.remove(shot, number));
    const label = make('label', { class: 'box' }, make('span', {}, words.comment), text);
    return { card: make('li', {}, label, remove), text };
  };
  const update = (): void => {
    const kept = comments.of(shot);
    for (const [number, { card }] of cards)
      if (!kept.some(([each]) => each === number)) {
        card.remove();
        cards.delete(number);
      }
    for (const [number, { says }] of kept) {
      let made = cards.get(number);
      if (!made) {
        made = cardOf(number);
        cards.set(number, made);
        list.append(made.card);
      }
      // What is being typed into stays as it is.
      if (made.text !== document.activeElement && made.text.value !== says) made.text.value = says;
    }
    add.hidden = kept.length >= MOST_COMMENTS;
    most.hidden = !add.hidden;
  };
  return update;
}
