/// <reference lib="dom" />
/** What the text's cursor stands in, marked in the live view and brought into sight. */
import type { ToView } from './messages.ts';

type Followed = Omit<Extract<ToView, { kind: 'follow' }>, 'kind'>;

let at: Followed = { shot: null, key: null, cut: null };

const isSame = (one: Followed): boolean =>
  one.shot === at.shot && one.key === at.key && one.cut === at.cut;

/** @returns whether it is another place than before */
export function moved(to: Followed): boolean {
  const before = isSame(to);
  at = to;
  return !before;
}

/** After anything on the page was made anew. */
export function markCursor(head: Element, shots: ReadonlyMap<string, Element>): void {
  for (const [each, section] of shots) section.classList.toggle('current', each === at.shot);
  // The list of shots is made anew with the head.
  for (const entry of head.querySelectorAll('[data-to]'))
    if (entry.getAttribute('data-to') === at.shot) entry.setAttribute('aria-current', 'true');
    else entry.removeAttribute('aria-current');
  for (const marked of document.querySelectorAll('.at-cursor'))
    marked.classList.remove('at-cursor');
  for (const copy of document.querySelectorAll('.cut-here')) copy.remove();
  const row = rowOfCut(head);
  row?.classList.add('at-cursor');
  for (const place of placesOfKey(shots)) place.classList.add('at-cursor');
  const section = at.shot === null ? undefined : shots.get(at.shot);
  if (row && section) section.querySelector('header')?.after(cutHere(row));
}

/** Nothing moves that is in sight already. */
export function showCursor(head: Element, shots: ReadonlyMap<string, Element>): void {
  const section = at.shot === null ? undefined : shots.get(at.shot);
  const [place] = placesOfKey(shots);
  if (place) {
    const { top, bottom } = place.getBoundingClientRect();
    if (top < listHeight(head) || bottom > window.innerHeight)
      place.scrollIntoView({ block: 'center' });
  } else if (at.cut !== null && section) section.scrollIntoView({ block: 'start' });
  else if (section) {
    const { top, bottom } = section.getBoundingClientRect();
    const isShown = top < window.innerHeight * 0.7 && bottom > window.innerHeight * 0.3;
    if (!isShown) section.scrollIntoView({ block: 'start' });
  } else rowOfCut(head)?.scrollIntoView({ block: 'center' });
}

const listHeight = (head: Element): number => head.querySelector('.shots')?.clientHeight ?? 0;

const withValue = (name: string, value: string): string => `[${name}="${CSS.escape(value)}"]`;

const rowOfCut = (head: Element): Element | null =>
  at.cut === null ? null : head.querySelector(`tr${withValue('data-cut', at.cut)}`);

/** Where the sheet has the key of the shot: first its tile or its row. */
function placesOfKey(shots: ReadonlyMap<string, Element>): readonly Element[] {
  const { shot, key } = at;
  const section = shot === null ? undefined : shots.get(shot);
  if (!section || key === null) return [];
  const wanted = key === 'preflight' ? '.checks' : withValue('data-key', key);
  return [...section.querySelectorAll(wanted)];
}

/** The cut's row once more, with its head, at the shot that it uses. */
function cutHere(row: Element): Element {
  const heads = row.closest('table')?.querySelector('thead')?.cloneNode(true);
  const body = document.createElement('tbody');
  const copy = body.appendChild(row.cloneNode(true));
  if (copy instanceof Element) copy.classList.remove('at-cursor');
  const table = document.createElement('table');
  table.append(...(heads ? [heads] : []), body);
  const here = document.createElement('div');
  here.className = 'cut-here';
  here.append(table);
  return here;
}
