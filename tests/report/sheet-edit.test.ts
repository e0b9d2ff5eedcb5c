/** The edit on the sheet: what is drawn stands where the figures say, and is said in words. */
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { Say } from '../../shared/say/say.ts';
import { FAST_SETTING, MUSIC, withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const say = new Say();

const pageOf = (text: string): Document =>
  new JSDOM(sheetPage(coreWith(text).sheet(PLAN), { say }, 'sha256-x')).window.document;

const number = (element: Element | null | undefined, name: string): number =>
  Number(element?.getAttribute(name));

/** Units of the drawing a frame, from its margins. */
const unitsPerFrame = (frames: number): number => (760 - 2 * 10) / frames;

const CUTS = [
  'one: { shot: skin, from: 2 s, duration: 6 beats }',
  'two: { shot: frost, from: 18 s, duration: 6 beats, speed: 100 to 25 %, transition: dissolve 10 frames }',
];

describe('the picture of the edit', () => {
  // 12 beats of 16 2/3 frames: 200 frames.
  const page = pageOf(
    withEdit(CUTS, [MUSIC], {
      'kit/bodies/body-a/recording-modes/full-50': FAST_SETTING,
      'shots/frost/record': 'full-50',
      'shots/skin/record': 'full-50',
    }),
  );
  const unit = unitsPerFrame(200);

  it('has each cut as long as it is, and where it stands', () => {
    const box = page.querySelector('[data-cut="one"]');
    expect(number(box, 'x')).toBeCloseTo(10, 1);
    expect(number(box, 'width')).toBeCloseTo(100 * unit, 1);
  });

  it('hatches what no clip gives', () => {
    // 2 s of frost are left: t − 0.75·t²/8 = 2 at t = (8 − √(64 − 48))/1.5 = 8/3 s of 4.
    const missing = page.querySelector('[data-uncovered="two"]');
    expect(missing?.getAttribute('class')).toBe('needed');
    expect(number(missing, 'width')).toBeCloseTo(Math.ceil(25 * (4 - 8 / 3) - 0.5) * unit, 1);
    expect(number(missing, 'x') + number(missing, 'width')).toBeCloseTo(750, 1);
  });

  it('crosses out the part of a ramp that is slower than was recorded', () => {
    // From 100 to 25 %, under 50 % after two thirds.
    const slow = page.querySelector('[data-slow]');
    expect(slow?.getAttribute('class')).toBe('black');
    expect(number(slow, 'x')).toBeCloseTo(10 + (100 + (100 * 2) / 3) * unit, 1);
    expect(number(slow, 'width')).toBeCloseTo((100 / 3) * unit, 1);
  });

  it('lays a dissolve over the cut, half before it and half after', () => {
    const cross = page.querySelector('[data-dissolve="two"]');
    expect(number(cross, 'x1')).toBeCloseTo(10 + 95 * unit, 1);
    expect(number(cross, 'x2')).toBeCloseTo(10 + 105 * unit, 1);
  });

  it('marks every beat, bars longer', () => {
    expect(page.querySelectorAll('[data-beat]')).toHaveLength(12);
    expect(page.querySelectorAll('[data-beat="bar"]')).toHaveLength(3);
  });

  it('says it all in words, for who can’t see it', () => {
    expect(page.getElementById('edit-desc')?.textContent).toBe(
      '00:00:00:00: one shows skin for 100 frames at 100%, take 1, 2 s to 6 s. 00:00:04:00, dissolve 10 frames: two shows frost for 100 frames at 100 to 25%, take 1, 18 s to 20.5 s; repeats frames and its last 33 frames not covered by a clip.',
    );
  });

  it('has the cuts as a table too', () => {
    const rows = [...page.querySelectorAll('[aria-label="Cuts of the edit"] tbody tr')];
    expect(rows.map((row) => row.children[2]?.textContent)).toEqual(['one', 'two']);
  });
});

describe('a long edit', () => {
  it('runs over several rows, and every cut is in one of them', () => {
    const cuts = Array.from(
      { length: 45 },
      (_, index) => `c${index}: { shot: skin, duration: 1 s }`,
    );
    const page = pageOf(withEdit(cuts, []));
    const boxes = [...page.querySelectorAll('[data-cut], [data-uncovered]')];
    const names = boxes.map(
      (box) => box.getAttribute('data-cut') ?? box.getAttribute('data-uncovered'),
    );
    expect(new Set(names).size).toBe(45);
    const tops = new Set(boxes.map((box) => box.getAttribute('y')));
    expect(tops.size).toBe(5);
    for (const box of boxes) {
      expect(number(box, 'x')).toBeGreaterThanOrEqual(9.9);
      expect(number(box, 'x') + number(box, 'width')).toBeLessThanOrEqual(750.1);
    }
  });
});

describe('an edit that can’t be laid out', () => {
  it('is not drawn, and says why', () => {
    const page = pageOf(withEdit(['one: { shot: skin }']));
    expect(page.querySelector('.wide svg')).toBeNull();
    expect(page.querySelector('.wide figcaption')?.textContent).toBe(
      'Unknown: needs duration of one.',
    );
    expect(page.querySelector('.wide figcaption code')?.textContent).toBe('duration');
  });

  it('and a plan without cuts has no part about it', () => {
    expect(pageOf(withEdit([])).querySelector('.wide')).toBeNull();
  });
});

it('Markdown has the table', () => {
  const text = markdownText(sheetDocument(coreWith(withEdit(CUTS)).sheet(PLAN), say));
  expect(text).toContain('## The edit\n\n00:00:08:00, 200 frames, 8 s\n\n| Start | Length |');
});

it('says of a cut what the plan notes of it, its punch-in and its grade', () => {
  const text = withEdit([
    'one: { shot: skin, from: 2 s, duration: 6 beats, about: "hold for the title", grade: cold, reframe: 1.2x }',
    'two: { shot: frost, duration: 6 beats }',
  ]);
  const rows = [...pageOf(text).querySelectorAll('tr')].map((row) => row.textContent);
  expect(rows.find((row) => row.includes('hold for the title'))).toContain(
    'punch-in 1.2x, grade cold, hold for the title',
  );
  const markdown = markdownText(sheetDocument(coreWith(text).sheet(PLAN), say));
  expect(markdown).toContain('punch-in 1.2x, grade cold, hold for the title');
});
