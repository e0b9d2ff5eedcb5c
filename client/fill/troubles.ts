/// <reference lib="dom" />
/** What is not kept, can't be read or belongs to another version of the plan: told, never dropped. */
import { Day, dayText } from './day.ts';
import { button, make } from './dom.ts';
import { download } from './save.ts';
import { Store } from './store.ts';

/** @returns brings it up to what is kept */
export function troublesOf(day: Day): () => void {
  const { words } = day.data;
  const place = make('div', { class: 'fill-troubles', role: 'alert' });
  document.querySelector('main')?.prepend(place);
  let said = '';
  return () => {
    const { trouble, unreadable } = day.store;
    const others = day.store.otherMarks();
    const now = JSON.stringify([trouble, [...unreadable], others]);
    if (now === said) return;
    said = now;
    place.replaceChildren();
    if (trouble) place.append(make('p', {}, trouble === 'full' ? words.full : words.notKept));
    if (unreadable.size > 0)
      place.append(
        make('p', {}, words.broken),
        make('pre', {}, [...unreadable].map(([name, text]) => `${name}\n  ${text}`).join('\n')),
      );
    if (others.length > 0)
      place.append(
        make('p', {}, words.other),
        button(words.otherOut, () => {
          for (const mark of others) download(`${mark}.day.txt`, entriesOf(day, mark));
        }),
      );
  };
}

const entriesOf = ({ data }: Day, mark: string): string =>
  dayText(new Day({ ...data, mark }, new Store(data.plan, mark)));
