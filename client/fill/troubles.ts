/// <reference lib="dom" />
/** What is not kept, can't be read or belongs to another version of the plan: told, never dropped. */
import { button, make } from './dom.ts';
import type { Store } from './store.ts';

/**
 * @param saveOther what is kept under another mark goes out
 * @returns brings it up to what is kept
 */
export function troublesOf(
  store: Store,
  words: Readonly<Record<'full' | 'notKept' | 'broken' | 'other' | 'otherOut', string>>,
  saveOther: (mark: string) => void,
): () => void {
  const place = make('div', { class: 'fill-troubles', role: 'alert' });
  document.querySelector('main')?.prepend(place);
  let said = '';
  return () => {
    const { trouble, unreadable } = store;
    const others = store.otherMarks();
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
          for (const mark of others) saveOther(mark);
        }),
      );
  };
}
