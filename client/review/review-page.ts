/// <reference lib="dom" />
/**
 * What runs in the page that `lamella compare --format html` writes: takes comments on its shots and
 * keeps them where the browser does. It asks nothing of a network, which the page's policy forbids.
 */
import type { ReviewData } from '../../shared/report/compare/review.ts';
import { isName } from '../fill/as-written.ts';
import { button, filled, make, say } from '../fill/dom.ts';
import { baseOf, download, saveOf } from '../fill/save.ts';
import { troublesOf } from '../fill/troubles.ts';
import { boxesOf } from './box.ts';
import { Comments } from './comments.ts';

const main = document.querySelector('main')!;
const data: ReviewData = JSON.parse(main.dataset.review ?? '');
const { words, plan } = data;
const comments = new Comments(data);
document.documentElement.classList.add('filling');

const sections = [...document.querySelectorAll<HTMLElement>('[data-shot]')].flatMap((section) => {
  const shot = section.dataset.shot ?? '';
  // What can't be brought back isn't commented.
  return isName(shot) ? [{ shot, section }] : [];
});
const shots = sections.map(({ shot }) => shot);

const save = saveOf({
  words,
  file: `${baseOf(plan)}.review.txt`,
  text: () => comments.text(shots),
  by: comments.by,
  setBy: (by) => comments.setBy(by),
  clear: () => comments.store.clear(),
});
const count = make('strong');
document.body.append(
  make(
    'nav',
    { class: 'fill-bar', 'aria-label': words.review },
    make('p', {}, count, make('span', {}, plan)),
    button(words.save, () => save.open()),
  ),
);
const showCount = (): void => {
  const all = comments.said(shots).length;
  say(count, all === 0 ? words.none : all === 1 ? words.one : filled(words.many, all));
};

const updates: readonly (() => void)[] = [
  ...sections.map(({ shot, section }) => boxesOf(comments, shot, section)),
  showCount,
  save.update,
  // Last, when everything that is kept has been read.
  troublesOf(comments.store, words, (mark) =>
    download(`${mark}.review.txt`, new Comments({ ...data, mark }).text(shots)),
  ),
];
const update = (): void => {
  for (const each of updates) each();
};
comments.store.readAside();
comments.store.onChange(update);
window.addEventListener('pageshow', update);
update();
