/// <reference lib="dom" />
/**
 * What runs in the live view: exchanges the sections that changed, follows the cursor of the
 * text, and says what was clicked. Everything it puts up was escaped where it was made.
 */
import type { FromView, ToView } from './messages.ts';
import { keepFrame, putFrame } from './traced.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromView): void };

const editor = acquireVsCodeApi();
const main = document.querySelector('main')!;
const head = document.createElement('div');
main.append(head);

const shots = new Map<string, Element>();

window.addEventListener('message', ({ data }: MessageEvent<ToView>) => {
  if (data.kind === 'sheet') show(data);
  else if (data.kind === 'frame') showFrame(data);
  else follow(data.shot);
});

function show({ patterns, head: html, shots: now }: Extract<ToView, { kind: 'sheet' }>): void {
  if (patterns !== undefined) {
    shots.clear();
    main.replaceChildren(head);
    document.querySelector('.patterns')?.remove();
    document.body.prepend(...elementsOf(patterns));
  }
  head.replaceChildren(...elementsOf(html));
  for (const { name, html: section } of now) {
    if (section === undefined) continue;
    const [made] = elementsOf(section);
    if (!made) continue;
    const before = shots.get(name);
    if (before?.classList.contains('current')) made.classList.add('current');
    putFrame(name, made);
    before?.replaceWith(made);
    shots.set(name, made);
  }
  const names = new Set(now.map(({ name }) => name));
  for (const [name, section] of shots) {
    if (names.has(name)) continue;
    section.remove();
    shots.delete(name);
  }
  // Only what is out of its place is moved: a section that is moved loses focus and scroll.
  let place: Element = head;
  for (const { name } of now) {
    const section = shots.get(name);
    if (!section) continue;
    if (place.nextElementSibling !== section) place.after(section);
    place = section;
  }
}

function showFrame(traced: Extract<ToView, { kind: 'frame' }>): void {
  keepFrame(traced);
  const section = shots.get(traced.shot);
  if (section) putFrame(traced.shot, section);
}

function elementsOf(html: string): Element[] {
  const template = document.createElement('template');
  template.innerHTML = html;
  return [...template.content.children];
}

/** Marks the shot at the text's cursor, and brings it into view where nothing of it is. */
function follow(name: string | null): void {
  for (const [each, section] of shots) section.classList.toggle('current', each === name);
  const section = name === null ? undefined : shots.get(name);
  if (!section) return;
  const { top, bottom } = section.getBoundingClientRect();
  const isShown = top < window.innerHeight * 0.7 && bottom > window.innerHeight * 0.3;
  if (!isShown) section.scrollIntoView({ block: 'start' });
}

document.addEventListener('click', ({ target }) => {
  if (!(target instanceof Element)) return;
  const cut = target.closest('[data-cut]')?.getAttribute('data-cut');
  if (cut) editor.postMessage({ kind: 'go-to-cut', cut });
  const shot = target.closest('[data-shot]')?.getAttribute('data-shot');
  const key = target.closest('[data-key]')?.getAttribute('data-key') ?? '';
  const isHeading = target.closest('h2') !== null;
  if (shot && (key !== '' || isHeading)) editor.postMessage({ kind: 'go', shot, key });
});

editor.postMessage({ kind: 'ready' });
