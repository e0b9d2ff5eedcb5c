/** What to measure of lenses, with room to write it down. */
import { type Block, paragraph, type Section, section, table, worded } from '../../api/document.ts';
import type { SheetMeasurement } from '../../api/sheet.ts';
import { message } from '../../words/message.ts';
import { inline } from '../document/html.ts';
import { el, markup } from '../markup.ts';

const title = (): string => message`Measurements`;
const remarks = (): string => message`Remarks`;

const lead = (): string =>
  message`These narrow the figures of the shots most, in this order. Write each one as a row of \`bench\` of its lens.`;

const boxWords = ({ label, unit }: SheetMeasurement['boxes'][number]): string =>
  unit === null ? label : `${label} (${unit})`;

/** One after the other, each with its boxes as an empty row. */
export const measurementsDocument = (
  measurements: readonly SheetMeasurement[],
): readonly Section[] =>
  section(
    2,
    title(),
    measurements.length === 0
      ? []
      : [
          paragraph(worded(lead())),
          ...measurements.flatMap(({ lens, how, gives, boxes, row }, index): readonly Block[] => [
            ...section(3, `${lens} (${index + 1})`, [
              paragraph(how),
              paragraph(gives),
              paragraph(worded(`\`${row}\``)),
              table([...boxes.map(boxWords), remarks()], [[]]),
            ]),
          ]),
        ],
  );

/** @returns nothing where no lens is to be measured */
export function measurementsHtml(measurements: readonly SheetMeasurement[]): readonly string[] {
  if (measurements.length === 0) return [];
  return [
    markup(
      el(
        'section',
        { class: 'measurements', 'aria-labelledby': 'measurements.name' },
        el('h2', { id: 'measurements.name' }, title()),
        el('p', { class: 'note' }, ...inline(worded(lead()))),
        el('ol', {}, ...measurements.map(card)),
      ),
    ),
  ];
}

const card = ({ lens, how, gives, boxes, row }: SheetMeasurement) =>
  el(
    'li',
    {},
    el('header', {}, el('h3', {}, lens), el('code', {}, row)),
    el('p', {}, how, ' ', gives),
    el(
      'dl',
      { class: 'boxes' },
      ...boxes.map(({ label, unit }) =>
        el('div', {}, el('dt', {}, label), el('dd', {}, unit ?? '')),
      ),
      el('div', { class: 'remarks' }, el('dt', {}, remarks()), el('dd', {}, '')),
    ),
  );
