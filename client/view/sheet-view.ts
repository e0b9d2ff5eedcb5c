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
head.className = 'head';
main.append(head);

const shots = new Map<string, Element>();
/** The shot at the text's cursor. */
let current: string | null = null;

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
  markInList();
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

/** The list of shots is made anew with the head. */
function markInList(): void {
  for (const entry of head.querySelectorAll('[data-to]')) {
    const isCurrent = entry.getAttribute('data-to') === current;
    if (isCurrent) entry.setAttribute('aria-current', 'true');
    else entry.removeAttribute('aria-current');
  }
}

/** Marks the shot at the text's cursor, and brings it into view where nothing of it is. */
function follow(name: string | null): void {
  for (const [each, section] of shots) section.classList.toggle('current', each === name);
  current = name;
  markInList();
  const section = name === null ? undefined : shots.get(name);
  if (!section) return;
  const { top, bottom } = section.getBoundingClientRect();
  const isShown = top < window.innerHeight * 0.7 && bottom > window.innerHeight * 0.3;
  if (!isShown) section.scrollIntoView({ block: 'start' });
}

document.addEventListener('click', (event) => {
  const { target } = event;
  if (!(target instanceof Element)) return;
  const to = target.closest('[data-to]')?.getAttribute('data-to');
  if (to) {
    // The frame around this page follows links in ways of its own.
    event.preventDefault();
    shots.get(to)?.scrollIntoView({ block: 'start' });
    return;
  }
  if (target.closest('.chooser')) return;
  const choice = target.closest('[data-value]');
  if (choice) {
    set(choice, choice.getAttribute('data-value'));
    return;
  }
  const cut = target.closest('[data-cut]')?.getAttribute('data-cut');
  if (cut) editor.postMessage({ kind: 'go-to-cut', cut });
  const shot = target.closest('[data-shot]')?.getAttribute('data-shot');
  const key = target.closest('[data-key]')?.getAttribute('data-key') ?? '';
  const isHeading = target.closest('h2') !== null;
  if (shot && (key !== '' || isHeading)) editor.postMessage({ kind: 'go', shot, key });
});

document.addEventListener('change', ({ target }) => {
  if (target instanceof HTMLSelectElement && target.value !== '') set(target, target.value);
});

/** The plan is changed; the sheet follows it, as it follows typing. */
function set(chosen: Element, value: string | null): void {
  const shot = chosen.closest('[data-shot]')?.getAttribute('data-shot');
  const key = chosen.closest('[data-sets]')?.getAttribute('data-sets');
  if (shot && key && value !== null) editor.postMessage({ kind: 'set', shot, key, value });
}

editor.postMessage({ kind: 'ready' });
