/** The colours between crossed polarisers along the retardation, and where the subject's own lie. */

import type { Drawing } from '../../../api/drawing.ts';
import { ORDER_NM, retardationChart } from '../../../figures/through.ts';
import { message } from '../../../words/message.ts';
import { el } from '../../markup.ts';
import { label, line, MARGIN, textWidth, WIDTH } from '../canvas.ts';
import { type SaidShot, undrawn } from '../said.ts';

const ROOM = WIDTH - 2 * MARGIN;
const OWN = 14;
const BRACKET = 22;
const TOP = 34;
const STRIP = 40;
/** Columns of colour: about one for every three units. */
const STEPS = 110;
/** As many orders as the usual chart has colours in; they pale towards the end. */
const LEAST_ORDERS = 3;

export function retardationDrawing({ bench, figures }: SaidShot): Drawing | null {
  const { retardationNm: own, retardationColours: colours } = figures;
  const { subject } = bench;
  const drawing = {
    id: 'retardation',
    title: message`Colours between polarisers`,
    key: 'subject',
  } as const;
  if (!subject || subject.fields.birefringence.state === 'missing') return null;
  if (!own.known || !colours.known) {
    // Without crossed polarisers nobody looks for them.
    const words = undrawn(drawing, [own, colours]);
    return bench.filters.known && bench.filters.value.length > 0 ? words : null;
  }
  const [from, to] = own.value;
  const orders = Math.max(LEAST_ORDERS, Math.ceil(to / ORDER_NM));
  const end = orders * ORDER_NM;
  const chart = retardationChart(bench, end, STEPS);
  if (!chart.known) return undrawn(drawing, [chart]);
  const x = (nm: number): number => MARGIN + (nm / end) * ROOM;
  const range = from === to ? nm(from) : message`${Math.round(from)} to ${nm(to)}`;
  const said = message`${subject.name}: ${range}`;
  const [first, last] = colours.value.orders;
  const each = ROOM / STEPS;
  return {
    ...drawing,
    words:
      first === last
        ? message`${said}, order ${first}. The strip runs from 0 to ${nm(end)}, through ${orders} orders.`
        : message`${said}, orders ${first} to ${last}. The strip runs from 0 to ${nm(end)}, through ${orders} orders.`,
    caption: message`Numbers: orders of colour. The bracket is what \`${subject.name}\` shows, at 45° to the polarisers.`,
    picture: {
      height: TOP + STRIP + 42,
      shapes: [
        ...chart.value.map(({ hex }, index) =>
          el('rect', {
            x: MARGIN + index * each,
            y: TOP,
            // A hair wider than its share, or the screen shows seams between them.
            width: index === STEPS - 1 ? each : each + 0.4,
            height: STRIP,
            fill: hex,
          }),
        ),
        line('limit', x(from), BRACKET, x(to), BRACKET, { 'data-span': 'retardation' }),
        line('limit', x(from), BRACKET, x(from), TOP),
        line('limit', x(to), BRACKET, x(to), TOP),
        label(said, (x(from) + x(to)) / 2, OWN),
        ...orderMarks(orders, x),
        label(nm(0), MARGIN, TOP + STRIP + 38, 'start'),
        label(nm(end), WIDTH - MARGIN, TOP + STRIP + 38, 'end'),
      ],
    },
  };
}

const nm = (value: number): string => message`${Math.round(value)} nm`;

/** A line where each order begins, and its number; of many, only as many numbers as there is room for. */
function orderMarks(orders: number, x: (nm: number) => number) {
  const room = x(ORDER_NM) - x(0);
  const widest = textWidth(String(orders)) + 6;
  const every = Math.ceil(widest / room);
  return Array.from({ length: orders }, (_, index) => [
    line('edge', x(index * ORDER_NM), TOP + STRIP, x(index * ORDER_NM), TOP + STRIP + 8),
    index % every === 0 && label(String(index + 1), x((index + 0.5) * ORDER_NM), TOP + STRIP + 20),
  ]).flat();
}
