/** A shot's traced frame on the printed sheet. */

import { worded } from '../../api/document.ts';
import type { Element } from '../../api/drawing.ts';
import type { PageFrame } from '../../api/frame.ts';
import { message } from '../../words/message.ts';
import { inline } from '../document/html.ts';
import { el } from '../markup.ts';

/** Its caption is its words too: who can't see it misses no more than the colours. */
export const framePicture = ({ src, width, height, caption }: PageFrame): Element =>
  el(
    'figure',
    { class: 'frame' },
    el('h3', {}, message`Traced picture`),
    el('img', { src, width, height, alt: message`The frame as traced from the plan` }),
    el('figcaption', {}, ...inline(worded(caption.join(' ')))),
  );
