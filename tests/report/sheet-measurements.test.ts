/** The sheet's page of measurements: what is on it, in which order, and when there is none. */
import { describe, expect, it } from 'vitest';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { sheetHead, sheetPage } from '../../shared/report/sheet/html.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { documentOf, pageOf, STYLE_HASH, sampleCore, samples } from './support/sheets.ts';

const measurementsOf = (text: string) =>
  sampleCore(text).sheet(PLAN, { isWrittenOn: true }).measurements;
const [, FROM_SHEETS] = samples.find(([name]) => name.startsWith('from-sheets'))!;

const core = sampleCore(FROM_SHEETS);
const sheet = core.sheet(PLAN, { isWrittenOn: true });
const page = documentOf(sheetPage(sheet, { say: new Say() }, STYLE_HASH));

/** Of a row, what is written there with its numbers: `field: ? mm` is one. */
const gaps = (row: string): number => row.split('?').length - 1;

describe('the page of measurements', () => {
  it('begins with what `measure` would have measured of the lens of its first row', () => {
    each(
      samples.map(([, text]) => text),
      (text) => {
        const its = sampleCore(text);
        const rows = its.sheet(PLAN, { isWrittenOn: true }).measurements;
        expect(rows.length).toBeLessThanOrEqual(5);
        for (const lens of new Set(rows.map((row) => row.lens))) {
          const first = rows.find((row) => row.lens === lens)!;
          const { how, gives, row } = its.measure(PLAN, lens)[0]!.next!;
          expect(first).toMatchObject({ how, gives, row });
        }
        expect(new Set(rows.map(({ lens, row }) => lens + row)).size).toBe(rows.length);
      },
      (text) => text.slice(0, 60),
    );
  });

  it('promises of the second row what `measure` promises once the first was taken', () => {
    const all = measurementsOf(EXAMPLE_PLAN);
    const [first, second] = all.filter(({ lens }) => lens === all[0]!.lens);
    const { expected } = coreWith(EXAMPLE_PLAN).measure(PLAN, first!.lens)[0]!.next!;
    const row = first!.row.replace(/\?(, marked: )\?|\?/, (_, marked) =>
      marked ? `${8 * 2 ** (expected / 2)}${marked}f/8` : String(expected),
    );
    const text = changed(EXAMPLE_PLAN, { [`kit/lenses/${first!.lens}/bench`]: `[${row}]` });
    const after = coreWith(text).measure(PLAN, first!.lens)[0]!.next!;
    expect(second!.row).toBe(after.row);
    const numbers = (words: string) =>
      [...words.matchAll(/±([\d.]+)/g)].map(([, one]) => Number(one));
    const [promised, true_] = [numbers(second!.gives), numbers(after.gives)];
    expect(promised.length).toBe(true_.length);
    for (const [index, one] of promised.entries()) {
      expect(one / true_[index]!).toBeGreaterThan(0.8);
      expect(one / true_[index]!).toBeLessThan(1.25);
    }
  });

  it('has a card a row, its sentences, its row of the bench, and empty boxes', () => {
    const rows = sheet.measurements;
    const cards = [...page.querySelectorAll('.measurements > ol > li')];
    expect(page.querySelector('.measurements h2')!.textContent).toBe('Measurements');
    expect(cards.length).toBe(rows.length);
    expect(rows.length).toBeGreaterThan(2);
    for (const [index, card] of cards.entries()) {
      const { lens, how, gives, row, boxes } = rows[index]!;
      for (const words of [lens, how, gives, row]) expect(card.textContent).toContain(words);
      const labels = [...card.querySelectorAll('.boxes dt')].map(({ textContent }) => textContent);
      expect(labels).toEqual([...boxes.map(({ label }) => label), 'Remarks']);
      expect(boxes.length).toBeGreaterThanOrEqual(gaps(row));
      const filled = [...card.querySelectorAll('.boxes dd')].map(({ textContent }) => textContent);
      expect(filled).toEqual([...boxes.map(({ unit }) => unit ?? ''), '']);
    }
  });

  it('comes last, on paper as a page of its own', () => {
    expect(page.querySelector('main > :last-child')!.className).toBe('measurements');
    const style = page.querySelector('style')!.textContent!;
    expect(style).toMatch(/@media print \{[^@]*\.measurements \{ break-before: page;/);
  });

  it('says the same in Markdown', () => {
    const markdown = markdownText(sheetDocument(sheet, new Say()));
    for (const { row } of sheet.measurements) expect(markdown).toContain(`\`${row}\``);
    expect(markdown).toContain('## Measurements');
    expect(markdown).toContain('| Width of field (mm) | Remarks |');
  });
});

describe('there is none', () => {
  it('where no shot has a lens', () => {
    const empty = documentOf(pageOf(coreWith('shootplan: 1\ntitle: Nothing yet\n')));
    expect(empty.querySelector('.measurements')).toBeNull();
  });

  it('where the lenses are known well enough', () => {
    const rows = (lens: string, ...more: readonly string[]): Record<string, string> => ({
      [`kit/lenses/${lens}/bench`]: `[${more.join(', ')}]`,
    });
    let text = EXAMPLE_PLAN;
    for (let row = 0; row < 12; row++) {
      const [next] = measurementsOf(text);
      if (!next) break;
      const advice = coreWith(text).measure(PLAN, next.lens)[0]!.next!;
      taken.set(next.lens, [
        ...(taken.get(next.lens) ?? []),
        advice.row
          .replace('?, marked: ?', `${8 * 2 ** (advice.expected / 2)}, marked: f/8`)
          .replace('?', String(advice.expected)),
      ]);
      text = changed(text, rows(next.lens, ...taken.get(next.lens)!));
    }
    expect([...taken.values()].flat().length).toBeGreaterThan(1);
    expect(measurementsOf(text)).toEqual([]);
    expect(documentOf(pageOf(coreWith(text))).querySelector('.measurements')).toBeNull();
  });
  const taken = new Map<string, readonly string[]>();

  it('in a view that is only read', () => {
    expect(core.sheet(PLAN).measurements).toEqual([]);
    expect(sheetHead(core.sheet(PLAN), { say: new Say(), live: true }).head).not.toContain(
      'Measurements',
    );
  });
});
