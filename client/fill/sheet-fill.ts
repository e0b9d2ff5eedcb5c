/// <reference lib="dom" />
/**
 * What runs in the page that `lamella sheet` writes: makes it one to fill in, and keeps what is filled
 * in where the browser keeps it. It asks nothing of a network, which the page's policy forbids.
 */

import type { FillData } from '../../shared/report/sheet/fill.ts';
import { isName } from './as-written.ts';
import { barOf } from './bar.ts';
import { checksOf } from './checks.ts';
import { codeOf } from './code.ts';
import { Day, dayText } from './day.ts';
import { give } from './given.ts';
import { measurementsOf } from './measurements.ts';
import { baseOf, download, saveOf } from './save.ts';
import { Store } from './store.ts';
import { takesOf } from './takes.ts';
import { troublesOf } from './troubles.ts';

const main = document.querySelector('main')!;
const data: FillData = JSON.parse(main.dataset.fill ?? '');
const day = new Day(data, new Store(data.plan, data.mark));
document.documentElement.classList.add('filling');

const elements = [...document.querySelectorAll('.shot')];
const sections = new Map(
  data.shots.flatMap(({ name }, index): [string, Element][] => {
    const section = elements[index];
    // What can't be brought back isn't filled in.
    return section && isName(name) ? [[name, section]] : [];
  }),
);

const head = document.querySelector('.plan')!;
const measurements = document.querySelector('.measurements');
const takes = data.shots.flatMap((shot) => {
  const section = sections.get(shot.name);
  return section ? [{ ...takesOf(day, shot, section), check: checksOf(day, shot, section) }] : [];
});
const save = saveOf({
  words: data.words,
  file: `${baseOf(data.plan)}.day.txt`,
  text: () => dayText(day),
  by: () => day.about().by ?? '',
  setBy: (by) => day.setBy(by),
  clear: () => day.store.clear(),
  taken: (text) => give(day, text),
  code: { words: data.words, draw: () => codeOf(dayText(day, true), data.words.code) },
});
const saveOther = (mark: string): void =>
  download(`${mark}.day.txt`, dayText(new Day({ ...data, mark }, new Store(data.plan, mark))));
const updates: readonly (() => void)[] = [
  checksOf(day, null, head),
  ...takes.flatMap(({ update, check }) => [update, check]),
  ...(measurements ? [measurementsOf(day, measurements)] : []),
  barOf(day, sections, () => save.open()),
  save.update,
  // Last, when everything that is kept has been read.
  troublesOf(day.store, data.words, saveOther),
];

const update = (): void => {
  for (const each of updates) each();
};
day.store.readAside();
day.store.onChange(update);
window.addEventListener('pageshow', update);
update();
// Once it is laid out, pictures included.
if ('print' in main.dataset) window.addEventListener('load', () => window.print());
setInterval(() => {
  for (const { tick } of takes) tick();
}, 250);
