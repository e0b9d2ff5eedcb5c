/** The day on the sheet: one order for table, times and drawing, in words for Markdown, and in hovers. */
import { describe, expect, it } from 'vitest';
import type { Element } from '../../shared/api/drawing.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const DAY =
  '{ date: 2027-03-02, place: back room, start: 09:00, end: 10:05, rig-change: 20 min, light-change: 3 min, subject-change: 4 min, new-film: 2 min }';

const text = changed(EXAMPLE_PLAN, {
  day: DAY,
  'shots/frost/take': '{ duration: 10 min, count: 3, settle: 1 min }',
  'shots/skin/take': '{ duration: 15 s, count: 3, settle: 5 s }',
  'shots/skin/priority': '2',
});

const sheet = coreWith(text).sheet(PLAN);
const shapes = sheet.day!.drawing.picture!.shapes.filter(
  (one): one is Element => typeof one === 'object' && one !== null,
);

describe('the day on the sheet', () => {
  it('has the hours of its shots in the table of the order', () => {
    expect(sheet.order.steps.map(({ shot, begins }) => [shot, begins])).toEqual([
      ['frost', '09:27'],
      ['skin', '10:30'],
    ]);
  });

  it('draws takes to scale, and the end of the day', () => {
    const bars = shapes.filter(({ attributes }) => attributes['data-day-shot'] !== undefined);
    const [frost, skin] = bars.map(({ attributes }) => attributes);
    const scale = Number(frost!.width) / 33;
    expect((Number(skin!.x) - Number(frost!.x)) / scale).toBeCloseTo(63, 1);
    const end = shapes.find(({ attributes }) => attributes['data-day-end'] === '10:05');
    expect((Number(end!.attributes.x1) - Number(frost!.x)) / scale).toBeCloseTo(38, 1);
  });

  it('says the same in words', () => {
    const markdown = markdownText(sheetDocument(sheet, new Say()));
    expect(markdown).toContain('## The day\n\n2027-03-02 · back room · 09:00 to 10:05\n');
    expect(markdown).toContain('09:00 rig, 1 light, subject; 09:27 to 10:00 `frost`.');
    expect(markdown).toContain('Too long; the others fit without `skin`.');
    expect(markdown).toContain('| frost | 09:27 |');
  });

  it('leaves out what is left for another day', () => {
    const later = changed(text, { day: DAY.replace(' }', ', not-today: [skin] }') });
    const its = coreWith(later).sheet(PLAN);
    expect(its.order.steps.map(({ shot }) => shot)).toEqual(['frost']);
    expect(its.day!.remarks.join(' ')).toContain('Left for another day: `skin`.');
  });

  it('is none without a day, and has no times then', () => {
    const none = coreWith(EXAMPLE_PLAN).sheet(PLAN);
    expect(none.day).toBeNull();
    expect(none.order.steps.every(({ begins }) => begins === null)).toBe(true);
  });
});

describe('hovers', () => {
  const hoverOn = (word: string): string => {
    const lines = text.split('\n');
    const line = lines.findIndex((one) => one.includes(word));
    const character = lines[line]!.indexOf(word) + word.length - 1;
    return coreWith(text).hover(PLAN, { line, character })?.markdown ?? '';
  };

  it('on the day say how long it is and what is too much', () => {
    expect(hoverOn('end: 10:05')).toContain('Time needed: **95 min of 65 min');
    expect(hoverOn('end: 10:05')).toContain('| too long | 30 min |');
  });

  it('on the priority of a shot say its hours', () => {
    expect(hoverOn('priority: 2')).toContain('Begins: **10:30**');
  });
});
