/** Laws of what the figures of a shot lie between. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UncertainShot } from '../../shared/figures/uncertain.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { given, halved, inPlan } from '../support/narrowed.ts';
import { NUMBERS } from '../support/numbers.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { benchPlan, uncertainPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';
import { scalarsIn } from '../support/scalars.ts';
import { SHEET_PLANS } from '../support/sheet-plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const SAMPLES = new URL('../../samples/', import.meta.url);

/** Keys of which something is assumed where they are left out. */
const ASSUMED = new Set(['loss', 'pupil-ratio', 'flange-distance', 'front-diameter', 'modulation']);

/** The samples as their makers' sheets would have had them. */
const bareSamples = readdirSync(SAMPLES)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, SAMPLES), 'utf8'))
  .map((text) =>
    scalarsIn(text)
      .filter(({ at }) => /^(?:kit|lights)\//.test(at) && ASSUMED.has(at.split('/').at(-1)!))
      .reduce((now, { at }) => changed(now, { [at]: null }), text),
  );

const random = (seed: number, usual: number) =>
  fc.sample(uncertainPlan(), { seed, numRuns: manyRuns(usual) });

const widthOf = (shot: UncertainShot, name: string): number => {
  const bounds = shot.bounds(NUMBERS.find(([other]) => other === name)![1]);
  return bounds ? bounds.high - bounds.low : 0;
};

const widens = (shot: UncertainShot, name: string): readonly string[] =>
  (shot.bounds(NUMBERS.find(([other]) => other === name)![1])?.widenedBy ?? []).map(
    ({ width }) => width.key,
  );

const shotIn = (text: string, name = 'frost'): UncertainShot => uncertainIn(text).get(name)!;

it('bounds contain the middle, are in order, and say what makes them wide', () => {
  let stated = 0;
  each(
    [...bareSamples, ...Object.values(SHEET_PLANS), ...random(3, 30).map(({ text }) => text)],
    (text) => {
      for (const shot of uncertainIn(text).values())
        for (const [name, pick] of NUMBERS) {
          const [middle, bounds] = [pick(shot.middle.figures), shot.bounds(pick)];
          if (!middle.known) expect(bounds, name).toBeUndefined();
          if (!bounds || !middle.known) continue;
          stated++;
          expect(bounds.low, name).toBeLessThanOrEqual(middle.value);
          expect(bounds.high, name).toBeGreaterThanOrEqual(middle.value);
          const shares = bounds.widenedBy.map(({ share }) => share);
          expect(shares, name).toEqual([...shares].sort((a, b) => b - a));
          const sum = shares.reduce((all, share) => all + share, 0);
          if (bounds.low < bounds.high) expect(sum, name).toBeCloseTo(1, 9);
          else
            expect(
              bounds.widenedBy.every((one) => one.mayBeImpossible),
              name,
            ).toBe(true);
        }
    },
    (text) => text.slice(0, 60),
  );
  expect(stated).toBeGreaterThan(1000);
});

/**
 * Where figures turn between the ends of an input, their extremes are looked for at eighths of the
 * way: what lies between two of them may be that much more, as a share of the width.
 */
const BETWEEN_LOOKS = 0.01;

it('knowing an input better never widens a figure', () => {
  let tried = 0;
  each(
    random(5, 16),
    ({ text }) => {
      for (const [name, shot] of uncertainIn(text)) {
        const turning = shot.widths.some(({ between }) => between.length > 0);
        for (const width of inPlan(shot))
          for (const better of [
            ...[-1, -0.3, 0, 0.6, 1].map((stand) => given(text, width, stand)),
            halved(text, width),
          ]) {
            if (better === undefined) continue;
            const after = shotIn(better, name);
            for (const [figure, pick] of NUMBERS) {
              if (!pick(shot.middle.figures).known) continue;
              const [wide, narrow] = [widthOf(shot, figure), widthOf(after, figure)];
              // Two endless bounds have no width to compare.
              if (Number.isNaN(wide) || Number.isNaN(narrow)) continue;
              tried++;
              const most = wide * (1 + (turning ? BETWEEN_LOOKS : 1e-6));
              const rounding = 1e-9 * Math.abs(after.bounds(pick)?.high ?? 0);
              expect(narrow, `${figure} by ${width.key}`).toBeLessThanOrEqual(most + rounding);
            }
          }
      }
    },
    ({ change }) => JSON.stringify(change),
  );
  expect(tried).toBeGreaterThan(5000);
});

describe('what cancels has no width', () => {
  const read = (through: string, change: Readonly<Record<string, string | null>> = {}) =>
    changed(SHEET_PLANS['as it stands']!, {
      'lights/panel/reading': `{ aperture: f/8, shutter: 1/50 s, iso: 400, through: ${through} }`,
      'shots/frost/rig': 'stacked',
      'shots/frost/field': '20 mm',
      ...change,
    });

  it('the loss of a lens in a reading through the same lens', () => {
    const shot = shotIn(read('bare-lens'));
    const losses = shot.bounds(NUMBERS.find(([name]) => name === 'exposureErrorStops')![1])!;
    const keys = losses.widenedBy.map(({ width }) => `${width.key} of ${width.of}`);
    expect(keys).toContain('loss of twice');
    expect(keys).not.toContain('loss of macro-100');
  });

  it('all glass in a reading through this rig; extension with it', () => {
    const shot = shotIn(read('this-rig'));
    expect(widens(shot, 'exposureErrorStops')).toEqual([]);
    expect(widthOf(shot, 'isoNeeded')).toBe(0);
  });

  it('the constants of a meter in any reading, and not in a light given in lux', () => {
    for (const through of ['meter', 'bare-lens', 'this-rig'])
      for (const key of widens(shotIn(read(through)), 'exposureErrorStops'))
        expect(key, through).not.toMatch(/meter constant/);
    const lux = SHEET_PLANS['with lux at a metre']!;
    expect(widens(shotIn(lux), 'exposureErrorStops')).toContain('the meter constant C');
  });

  it('what moves two parts of a figure together moves it once', () => {
    // Two lamps given in lux count by one constant: C from 250 to 340 is log2(340/250) of a stop.
    const text = changed(EXAMPLE_PLAN, {
      'lights/panel/reading': null,
      'lights/panel/illuminance': '900 lx',
      'lights/bulb/reading': null,
      'lights/bulb/illuminance': '700 lx',
      'shots/frost/light': '[panel, bulb]',
    });
    const shot = shotIn(text);
    const exposure = NUMBERS.find(([name]) => name === 'exposureErrorStops')![1];
    const index = shot.widths.findIndex(({ key }) => key === 'the meter constant C');
    const [middle, end] = [exposure(shot.middle.figures), exposure(shot.alone(index, 1).figures)];
    if (!middle.known || !end.known) throw new Error('not known');
    expect(middle.value - end.value).toBeCloseTo(Math.log2(340 / 250), 9);
  });
});

it('a plan with everything given is wide only by the iris and the constants of a meter', () => {
  let seen = 0;
  each(
    [EXAMPLE_PLAN, readFileSync(new URL('lantern.shootplan.yaml', SAMPLES), 'utf8')],
    (text) => {
      for (const shot of uncertainIn(text).values())
        for (const { at, assumed } of shot.widths) {
          seen++;
          expect(at).toBeNull();
          expect(['iris', 'incident-constant', 'reflected-constant']).toContain(assumed);
        }
    },
    (text) => text.slice(0, 60),
  );
  expect(seen).toBeGreaterThan(0);
});

describe('an end at which a figure has no value', () => {
  /** 1x is what the field takes at most: a lens that reaches less can't frame it. */
  const text = changed(EXAMPLE_PLAN, {
    'kit/lenses/macro-100/closest': '{ from-sensor: 0.31 m, magnification: 0.8 to 1.2x }',
    'shots/frost/field': '40 mm',
  });

  it('is not passed over: the bounds reach to the last value, and the input says so', () => {
    const shot = shotIn(text);
    const [, pick] = NUMBERS.find(([name]) => name === 'workingDistanceMm')!;
    const bounds = shot.bounds(pick)!;
    expect(bounds.widenedBy.find(({ mayBeImpossible }) => mayBeImpossible)?.width.key).toBe(
      'magnification',
    );
    // A field of 40 mm on 36 mm is 0.9x: from there to 0.8x there is no such shot.
    const last = shotIn(changed(text, { 'kit/lenses/macro-100/closest/magnification': '0.9001x' }));
    const edge = pick(last.middle.figures);
    if (!edge.known) throw new Error('not known');
    expect(bounds.low).toBeGreaterThan(edge.value - 0.01 * (bounds.high - bounds.low));
    expect(bounds.low).toBeLessThan(edge.value + 0.01 * (bounds.high - bounds.low));
  });

  it('makes a figure that nothing else moves look no surer', () => {
    const [, pick] = NUMBERS.find(([name]) => name === 'depthMm.needed')!;
    expect(shotIn(text).bounds(pick)).toMatchObject({
      widenedBy: [{ width: { key: 'magnification' }, share: 0, mayBeImpossible: true }],
    });
  });
});

it('a row that was read as expected never widens a figure of a lens that has rows', () => {
  let tried = 0;
  each(
    fc.sample(benchPlan(), { seed: 8, numRuns: manyRuns(4) }),
    ({ text, benches }) => {
      for (const [place, rows] of Object.entries(benches)) {
        const next = coreWith(text).measure(PLAN, place.split('/')[2])[0]?.next;
        if (!next) continue;
        const row = next.row
          .replace('?, marked: ?', `${8 * 2 ** (next.expected / 2)}, marked: f/8`)
          .replace('?', String(next.expected));
        const after = uncertainIn(changed(text, { [place]: rows.replace(/\]$/, `, ${row}]`) }));
        for (const [name, shot] of uncertainIn(text))
          for (const [figure, pick] of NUMBERS) {
            if (!pick(shot.middle.figures).known) continue;
            const [wide, narrow] = [widthOf(shot, figure), widthOf(after.get(name)!, figure)];
            if (!Number.isFinite(wide) || !Number.isFinite(narrow)) continue;
            tried++;
            expect(narrow, `${figure} of ${name} by ${row}`).toBeLessThanOrEqual(
              wide * 1.01 + 1e-9,
            );
          }
      }
    },
    ({ change }) => JSON.stringify(change),
  );
  expect(tried).toBeGreaterThan(100);
});
