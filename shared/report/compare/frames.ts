/** The frames of a shot before and after, side by side. */

import { type Inline, worded } from '../../api/document.ts';
import type { Element } from '../../api/drawing.ts';
import type { PageFrame } from '../../api/frame.ts';
import { message } from '../../words/message.ts';
import { inline } from '../document/html.ts';
import { el } from '../markup.ts';

export const FRAMES_STYLE = `
.frames { display: grid; grid-template-columns: 1fr 1fr; gap: .3rem .8rem; margin: .6rem 0 1rem; break-inside: avoid; }
.frames figure { margin: 0; }
.frames figure img { max-width: none; }
.frames .undrawn { border: 1px dashed var(--faint); padding: .6rem; }
.frames > .said { grid-column: 1 / -1; font-size: .9rem; }
.frames > .said p { margin: 0 0 .25rem; }
.compared td:nth-child(2) { color: var(--faint); }
.compared td, .compared th { width: 30%; }
.compared th:first-child, .compared td:first-child { width: 40%; }
.beside { border-top: 3px solid var(--ink); margin-top: 2rem; padding-top: .8rem; }
.beside h2 { font-size: 1.3rem; margin: 0 0 .35rem; }
@media print {
  .compared .shot { break-before: auto; margin-top: 6mm; }
  .compared .shot + .shot { break-inside: avoid; }
  .frames figure img { max-width: none; }
}
`;

/** A frame, why there is none, or null where there is no such shot or its findings say why. */
type Frame = PageFrame | string | null;

export function bothFrames(before: Frame, after: Frame): readonly Element[] {
  if (before === null && after === null) return [];
  const alike = isAlike(before, after);
  return [
    el(
      'div',
      { class: 'frames' },
      ...(alike
        ? [figureOf(message`Frame, unchanged`, after)]
        : [figureOf(message`Frame before`, before), figureOf(message`Frame after`, after)]),
      saidOf(before, after, alike),
    ),
  ];
}

const isAlike = (before: Frame, after: Frame): boolean =>
  isDrawn(before) && isDrawn(after) && before.src === after.src;

const isDrawn = (frame: Frame): frame is PageFrame => frame !== null && typeof frame !== 'string';

const figureOf = (title: string, frame: Frame): Element =>
  el(
    'figure',
    {},
    el('h3', {}, title),
    isDrawn(frame)
      ? el('img', { src: frame.src, width: frame.width, height: frame.height, alt: title })
      : el('p', { class: 'undrawn' }, ...inline(worded(frame ?? message`Not drawn.`))),
  );

/** Sentences of both once; what only one of them says is said of it. */
function saidOf(before: Frame, after: Frame, alike: boolean): Element {
  const [was, is] = [captionOf(before), captionOf(after)];
  const both = is.filter((one) => was.includes(one));
  const only = (label: string, all: readonly string[]): (readonly [string, Inline])[] => {
    const own = all.filter((one) => !both.includes(one));
    return own.length > 0 ? [[label, worded(own.join(' '))]] : [];
  };
  const rows = alike ? [] : [...only(message`Before:`, was), ...only(message`After:`, is)];
  return el(
    'div',
    { class: 'said' },
    ...rows.map(([label, text]) => el('p', {}, el('strong', {}, label), ' ', ...inline(text))),
    both.length > 0 && el('p', {}, ...inline(worded(both.join(' ')))),
  );
}

const captionOf = (frame: Frame): readonly string[] => (isDrawn(frame) ? frame.caption : []);
