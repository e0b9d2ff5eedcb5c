import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const BENCH = 'kit/lenses/long-200/bench';
const ROWS = [
  '{ with: [body-a], ring: closest, field: 119.7 mm, from-sensor: 848 mm }',
  '{ with: [body-a, tube-36], ring: closest, field: 66.1 mm, working-distance: 412 mm }',
  '{ with: [body-a, tube-36], ring: infinity, field: 199 mm, effective-f-number: 9.6, marked: f/8 }',
];
/** Without a ruler the lens itself is free of widths but for its iris and what is assumed. */
const PLAIN = changed(EXAMPLE_PLAN, { 'kit/lenses/long-200/pupil-ratio': null });
const withRows = (rows: readonly string[]) => changed(PLAIN, { [BENCH]: `[${rows.join(', ')}]` });

const figuresWith = (text: string) => {
  const found = [...coreWith(text).figures(PLAN)].find(([, { bounds }]) => bounds);
  return [...coreWith(text).figures(PLAN)].map(([shot, json]) => ({ shot, json, found }));
};

/** The shots whose rig has the lens. */
const farShots = (text: string) => figuresWith(text).filter(({ shot }) => FAR.includes(shot));
const FAR = [...EXAMPLE_PLAN.matchAll(/\n {2}([a-z-]+):\n(?: {4}.*\n)*? {4}rig: far\n/g)].map(
  ([, name]) => name!,
);

describe('a bench', () => {
  it('has shots that its lens is used in', () => {
    expect(FAR.length).toBeGreaterThan(0);
  });

  it('of no rows changes nothing', () => {
    expect(figuresWith(withRows([])).map(({ json }) => json)).toEqual(
      figuresWith(PLAIN).map(({ json }) => json),
    );
  });

  it('says the same of an f-number in either spelling', () => {
    const marked = ROWS.map((row) => row.replace('f-number: 9.6', 'f-number: f/9.6'));
    expect(marked).not.toEqual(ROWS);
    expect(findingsOf(withRows(marked)).map(({ what }) => what)).toEqual(
      findingsOf(withRows(ROWS)).map(({ what }) => what),
    );
    expect(coreWith(withRows(marked)).figures(PLAN)).toEqual(
      coreWith(withRows(ROWS)).figures(PLAN),
    );
  });

  it('changes only shots with its lens', () => {
    const [before, after] = [figuresWith(PLAIN), figuresWith(withRows(ROWS))];
    each(after, ({ shot, json }) => {
      const was = before.find((one) => one.shot === shot)!.json;
      if (FAR.includes(shot)) expect(json).not.toEqual(was);
      else expect(json).toEqual(was);
    });
  });

  it('narrows with every row, and stands for the lens as one input', () => {
    const widthOf = (rows: readonly string[]) =>
      farShots(withRows(rows)).map(({ json }) => {
        const [low, high] = json.bounds!.effectiveFNumber as readonly [number, number];
        return high - low;
      });
    const widths = [1, 2, 3].map((count) => widthOf(ROWS.slice(0, count)));
    for (const [index, one] of widths.entries())
      for (const [shot, width] of one.entries())
        if (index > 0) expect(width).toBeLessThanOrEqual(widths[index - 1]![shot]! * 1.02);
    for (const { json } of farShots(withRows(ROWS))) {
      const inputs = json.widenedBy!.effectiveFNumber!.map(({ input }) => input);
      expect(inputs).toContain('bench of long-200');
      expect(new Set(inputs).size).toBe(inputs.length);
      expect(inputs.join()).not.toMatch(/pupil-ratio of long-200|iris/);
    }
  });

  it('has bounds that hold the middle', () => {
    for (const { json } of farShots(withRows(ROWS))) {
      const [low, high] = json.bounds!.workingDistanceMm as readonly [number, number];
      expect(json.workingDistanceMm).toBeGreaterThan(low);
      expect(json.workingDistanceMm).toBeLessThan(high);
    }
  });
});

describe('rows that can not be used', () => {
  it('are findings, and never more than that', () => {
    each(
      [
        ['{ with: [body-a], ring: closest }', 'bench-says-nothing'],
        ['{ with: [body-a], ring: infinity, field: 100 mm }', 'bench-says-nothing'],
        ['{ with: [tube-36], ring: closest, field: 100 mm }', 'bench-says-nothing'],
        ['{ with: [tube-36, body-a], ring: closest, field: 100 mm }', 'bench-says-nothing'],
        ['{ with: [body-a, nosuch], ring: closest, field: 100 mm }', 'unknown-name'],
        ['{ with: [body-a, long-200], ring: closest, field: 100 mm }', 'unknown-name'],
        ['{ with: [body-a], ring: closest, effective-f-number: 9 }', 'bench-says-nothing'],
        ['{ with: [body-a], ring: closest, field: 100 ± 0 mm }', 'bench-differs'],
        ['{ with: [body-a], field: 100 mm }', 'missing-key'],
        ['nonsense', 'wrong-value'],
      ] as const,
      ([row, rule]) => {
        const rules = findingsOf(withRows([row])).map((finding) => finding.rule);
        expect(rules).toContain(rule);
        expect(rules).not.toContain('rule-failed');
      },
    );
  });
});
