/** The order of shots against every other order there is (brute force). */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { SetUp } from '../../shared/day/set-up.ts';
import { changesBetween, rebuilds, shootingOrder } from '../../shared/report/sheet/order.ts';
import { orders } from '../support/permutations.ts';

const setUp = fc.record({
  rig: fc.constantFrom('near', 'far', 'third'),
  light: fc.subarray(['panel', 'strip', 'bulb']),
  subject: fc.constantFrom('film', 'bubble'),
});

const plans = fc.array(setUp, { minLength: 1, maxLength: 6 }).map((rows) =>
  rows.map(
    ({ rig, light, subject }, index): SetUp => ({
      shot: `shot-${index}`,
      rig,
      parts: [rig],
      lights: light.map((name) => ({ name, place: 'here' })),
      subject,
      body: 'body',
      isLapse: false,
    }),
  ),
);

const rigChanges = (way: readonly SetUp[]): number =>
  way.filter(({ rig }, index) => index > 0 && way[index - 1]!.rig !== rig).length;

const lightChanges = (way: readonly SetUp[]): number =>
  way.reduce((sum, next, index) => {
    if (index === 0) return 0;
    const [before, after] = [way[index - 1]!, next].map(({ lights }) =>
      lights.map(({ name }) => name),
    );
    return (
      sum +
      [...before!, ...after!].filter((name) => before!.includes(name) !== after!.includes(name))
        .length
    );
  }, 0);

it('no other order changes rigs less, nor lights at as many rigs', () => {
  fc.assert(
    fc.property(plans, (setUps) => {
      const way = shootingOrder(setUps);
      expect(way.map(({ shot }) => shot).sort()).toEqual(setUps.map(({ shot }) => shot).sort());
      const rigs = rigChanges(way);
      const lights = lightChanges(way);
      for (const other of orders(setUps)) {
        const fewer = rigChanges(other) < rigs;
        expect(fewer).toBe(false);
        if (rigChanges(other) === rigs) expect(lightChanges(other)).toBeGreaterThanOrEqual(lights);
      }
    }),
    { numRuns: 60 },
  );
});

it('leaves shots of one set-up in the plan’s order, and counts the rebuilds of any', () => {
  const one = (shot: string, rig: string): SetUp => ({
    shot,
    rig,
    parts: [],
    lights: [],
    subject: null,
    body: 'body',
    isLapse: false,
  });
  const plan = [one('a', 'near'), one('b', 'far'), one('c', 'near'), one('d', 'far')];
  expect(shootingOrder(plan).map(({ shot }) => shot)).toEqual(['a', 'c', 'b', 'd']);
  expect([rebuilds(plan), rebuilds(shootingOrder(plan))]).toEqual([3, 1]);
});

it('says what is put up, moved and taken away', () => {
  const before: SetUp = {
    shot: 'a',
    rig: 'near',
    parts: ['body', 'lens'],
    lights: [
      { name: 'panel', place: 'left' },
      { name: 'bulb', place: 'up' },
    ],
    subject: 'film',
    body: 'body',
    isLapse: false,
  };
  const after: SetUp = {
    ...before,
    rig: 'far',
    lights: [
      { name: 'panel', place: 'right' },
      { name: 'strip', place: 'up' },
    ],
  };
  expect(changesBetween(before, after)).toEqual([
    'rig `far`',
    'light `panel` moved or dimmed',
    'light `strip` on',
    'light `bulb` off',
  ]);
  expect(changesBetween(before, before)).toEqual([]);
});

it('takes many set-ups, each once', () => {
  const many = Array.from(
    { length: 60 },
    (_, index): SetUp => ({
      shot: `shot-${index}`,
      rig: `rig-${index % 7}`,
      parts: [`part-${index % 7}`],
      lights: [{ name: `light-${index % 5}`, place: '' }],
      subject: null,
      body: 'body',
      isLapse: false,
    }),
  );
  const way = shootingOrder(many);
  expect(new Set(way).size).toBe(60);
  expect(rigChanges(way)).toBe(6);
});
