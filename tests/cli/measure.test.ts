/** `lamella measure`, and that it keeps what it promises. */
import { describe, expect, it } from 'vitest';
import type { MeasureAdvice } from '../../shared/api/measure.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { lamellaHere } from '../support/command-line.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const NAME = 'plan.shootplan.yaml';
const measure = (text: string, ...args: readonly string[]) =>
  lamellaHere(['measure', NAME, ...args], { [NAME]: text });

/** The row with what it expects where the number goes. */
function rowOf({ next }: MeasureAdvice): string {
  const { row, measure: key, expected } = next!;
  return key === 'effective-f-number'
    ? row.replace('?, marked: ?', `${(8 * 2 ** (expected / 2)).toFixed(3)}, marked: f/8`)
    : row.replace('?', expected.toFixed(3));
}

const adviceOn = (text: string, lens: string): MeasureAdvice =>
  coreWith(text).measure(PLAN, lens)[0]!;

const LENSES = coreWith(EXAMPLE_PLAN)
  .measure(PLAN)
  .filter(({ next }) => next !== null)
  .map(({ lens }) => lens);

describe('the measurement that would help most', () => {
  it('is named of at least two lenses of the example', () => {
    expect(LENSES.length).toBeGreaterThanOrEqual(2);
  });

  // What is promised by slopes must come true when the row is written and the lens fitted again.
  it.each(LENSES)('of %s narrows by what it promises', (lens) => {
    const { next } = adviceOn(EXAMPLE_PLAN, lens);
    const text = changed(EXAMPLE_PLAN, {
      [`kit/lenses/${lens}/bench`]: `[${rowOf(adviceOn(EXAMPLE_PLAN, lens))}]`,
    });
    const [first] = next!.narrows;
    const after = coreWith(text).figures(PLAN);
    const key = {
      depth: 'usableDepthMm',
      light: 'lightLossStops',
      'working-distance': 'workingDistanceMm',
    } as const;
    const halves = first!.shots.map((shot) => {
      const figures = after.get(shot)!;
      const [low, high] = figures.bounds![key[first!.figure]] as readonly [number, number];
      const value = figures[key[first!.figure]] as number;
      const half = (high - low) / 2;
      return first!.figure === 'light' ? half : half / value;
    });
    expect(Math.max(...halves)).toBeLessThan(first!.from);
    expect(Math.max(...halves) / first!.to).toBeGreaterThan(0.6);
    expect(Math.max(...halves) / first!.to).toBeLessThan(1.5);
  });

  it('is another one once it was taken', () => {
    const lens = LENSES[0]!;
    const first = adviceOn(EXAMPLE_PLAN, lens);
    const text = changed(EXAMPLE_PLAN, { [`kit/lenses/${lens}/bench`]: `[${rowOf(first)}]` });
    const second = adviceOn(text, lens);
    expect(second.rows).toBe(1);
    expect(second.next?.row).not.toBe(first.next!.row);
    for (const [index, { low, high }] of second.known.entries()) {
      const before = first.known[index]!;
      expect(high - low).toBeLessThanOrEqual((before.high - before.low) * 1.001);
    }
  });
});

describe('lamella measure', () => {
  it('says what is known, what to measure, and the row to write', async () => {
    const lens = LENSES[0]!;
    const { status, out } = await measure(EXAMPLE_PLAN, '--lens', lens);
    expect(status).toBe(0);
    expect(out).toContain(lens);
    expect(out).toContain('Measure next: Set up');
    expect(out).toContain('It narrows');
    expect(out).toContain('Row for its bench: { with: [body-a');
  });

  it('gives the same to programs', async () => {
    const { out } = await measure(EXAMPLE_PLAN, '--format', 'json');
    const json = JSON.parse(out);
    expect(json.version).toBe(1);
    expect(json.lenses).toEqual(coreWith(EXAMPLE_PLAN).measure(PLAN));
  });

  it('refuses a lens that no shot uses', async () => {
    const { status, err } = await measure(EXAMPLE_PLAN, '--lens', 'nosuch');
    expect(status).toBe(2);
    expect(err).toContain('nosuch');
  });

  it('says that there is nothing to measure in a plan without shots', async () => {
    const { status, out } = await measure('shootplan: 1\n');
    expect(status).toBe(0);
    expect(out).toContain('No shot uses a lens');
  });
});
