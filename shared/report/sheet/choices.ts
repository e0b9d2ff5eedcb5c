/** What sets a value in the live view: bands over a drawing, and a list of the same for a keyboard. */
import type { Choices, Element } from '../../api/drawing.ts';
import { message } from '../../words/message.ts';
import { el } from '../markup.ts';

export const bandsOf = ({ top, height, bands }: Choices): Element =>
  el(
    'g',
    { class: 'choices' },
    ...bands.map(({ text, from, to }) =>
      el(
        'rect',
        { x: from, y: top, width: to - from, height, 'data-value': text },
        el('title', {}, message`Set ${text}`),
      ),
    ),
  );

export function chooser({ key, bands }: Choices): Element {
  const isNone = bands.every(({ isSet }) => !isSet);
  return el(
    'label',
    { class: 'chooser' },
    message`Set ${key}:`,
    ' ',
    el(
      'select',
      {},
      isNone && el('option', { value: '', selected: true }, '…'),
      ...bands.map(({ text, isSet }) => el('option', { value: text, selected: isSet }, text)),
    ),
  );
}
