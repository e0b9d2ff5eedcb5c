/// <reference lib="dom" />
/**
 * What runs in the live view: exchanges the sections that changed, follows the cursor of the
 * text, and says what was clicked. Everything it puts up was escaped where it was made.
 */
import { markCursor, moved, showCursor } from './cursor.ts';
import type { FromView, ToView } from './messages.ts';
import { keepFrame, putFrame } from './traced.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromView): void;
  /** Kept by the editor over a reload of its window. */
  setState(state: { readonly plan: string }): void;
};

const editor = acquireVsCodeApi();
const main = document.querySelector('main')!;
const head = document.createElement('div');
head.className = 'head';
main.append(head);

editor.setState({ plan: main.dataset.plan ?? '' });

const shots = new Map<string, Element>();

window.addEventListener('message', ({ data }: MessageEvent<ToView>) => {
  if (data.kind === 'sheet') show(data);
  else if (data.kind === 'frame') showFrame(data);
  else {
    const isElsewhere = moved({ shot: data.shot, key: data.key, cut: data.cut });
    markCursor(head, shots);
    if (isElsewhere) showCursor(head, shots);
  }
});

function show({ patterns, head: html, shots: now }: Extract<ToView, { kind: 'sheet' }>): void {
  if (patterns !== undefined) {
    shots.clear();
    main.replaceChildren(head);
    document.querySelector('.patterns')?.remove();
    document.body.prepend(...elementsOf(patterns));
  }
  const focused = focusedBox();
  head.replaceChildren(...elementsOf(html));
  for (const { name, html: section } of now) {
    if (section === undefined) continue;
    const [made] = elementsOf(section);
    if (!made) continue;
    const before = shots.get(name);
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
  markCursor(head, shots);
  focused?.();
}

/** A box that was ticked by keyboard keeps the focus, though it is made anew with its section. */
function focusedBox(): (() => void) | null {
  const box = document.activeElement;
  const check = box?.getAttribute('data-check');
  if (!check) return null;
  const shot = box?.closest('[data-shot]')?.getAttribute('data-shot') ?? null;
  return () => {
    const place = shot === null ? head : shots.get(shot);
    const found = [...(place?.querySelectorAll<HTMLElement>('[data-check]') ?? [])];
    found.find((one) => one.getAttribute('data-check') === check)?.focus();
  };
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
  if (target.closest('.chooser, .checks')) return;
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
  if (target instanceof HTMLInputElement) tick(target);
  if (target instanceof HTMLSelectElement && target.value !== '') set(target, target.value);
});

/** The plan is changed; the sheet follows it, as it follows typing. */
function set(chosen: Element, value: string | null): void {
  const shot = chosen.closest('[data-shot]')?.getAttribute('data-shot');
  const key = chosen.closest('[data-sets]')?.getAttribute('data-sets');
  if (shot && key && value !== null) editor.postMessage({ kind: 'set', shot, key, value });
}

/** The box shows what the plan says, which follows. */
function tick(box: HTMLInputElement): void {
  const check = box.getAttribute('data-check');
  if (!check) return;
  const done = box.checked;
  box.checked = !done;
  const shot = box.closest('[data-shot]')?.getAttribute('data-shot') ?? null;
  editor.postMessage({ kind: 'tick', shot, check, done });
}

editor.postMessage({ kind: 'ready' });
