/** The film's colours over its thickness, with the orders that they run through. */

import type { Drawing } from '../../../api/drawing.ts';
import { allOf } from '../../../words/listed.ts';
import { message } from '../../../words/message.ts';
import { bandWords } from '../../film-words.ts';
import { el } from '../../markup.ts';
import { label, line, MARGIN, textWidth, WIDTH } from '../canvas.ts';
import { type SaidShot, undrawn } from '../said.ts';

const ROOM = WIDTH - 2 * MARGIN;
const TOP = 8;
const STRIP = 40;

export function coloursDrawing({ bench, figures }: SaidShot): Drawing | null {
  const { filmColours } = figures;
  const drawing = { id: 'colours', title: message`Colours of the film`, key: 'subject' } as const;
  if (!bench.subject) return null;
  if (!filmColours.known) return undrawn(drawing, [filmColours]);
  const { swatches, bands } = filmColours.value;
  const [first, last] = [swatches[0], swatches.at(-1)];
  if (!first || !last) return null;
  const nm = (value: number): string => message`${Math.round(value)} nm`;
  const [from, to] = [first.thicknessNm, last.thicknessNm];
  const ranges = allOf(
    bands.map(
      ({ band, fromNm, toNm }) => message`${bandWords(band)}: ${nm(fromNm)} to ${nm(toNm)}`,
    ),
  );
  const words = message`${ranges}. Its first maximum is shown near white.`;
  const isOne = to === from;
  const orders = bands.filter(({ band }) => band.startsWith('order'));
  const shown = message`The first maximum is shown near white.`;
  const numbers =
    orders.length === 1
      ? message`Numbers: the order of colour.`
      : message`Numbers: orders of colour.`;
  const caption = orders.length > 0 ? `${numbers} ${shown}` : shown;
  const x = (thickness: number): number =>
    isOne ? WIDTH / 2 : MARGIN + ((thickness - from) / (to - from)) * ROOM;
  const each = isOne ? ROOM : ROOM / (swatches.length - 1);
  return {
    ...drawing,
    words,
    caption,
    picture: {
      height: TOP + STRIP + 42,
      shapes: [
        ...swatches.map(({ thicknessNm, hex }) => {
          const middle = x(thicknessNm);
          const [left, right] = [
            Math.max(MARGIN, middle - each / 2),
            Math.min(MARGIN + ROOM, middle + each / 2),
          ];
          return el('rect', {
            // A hair wider than its share, or the screen shows seams between them.
            x: left,
            y: TOP,
            width: Math.min(MARGIN + ROOM, right + 0.4) - left,
            height: STRIP,
            fill: hex,
          });
        }),
        ...(isOne ? [] : bands).flatMap(({ band, fromNm, toNm }) => {
          const [start, end] = [x(Math.max(from, fromNm)), x(Math.min(to, toNm))];
          const said = band.replace(/^order /, '');
          return [
            line('edge', start, TOP + STRIP, start, TOP + STRIP + 8),
            ...(textWidth(said) <= end - start + 4
              ? [label(said, (start + end) / 2, TOP + STRIP + 20)]
              : []),
          ];
        }),
        label(nm(from), MARGIN, TOP + STRIP + 38, 'start'),
        ...(isOne ? [] : [label(nm(to), WIDTH - MARGIN, TOP + STRIP + 38, 'end')]),
      ],
    },
  };
}
