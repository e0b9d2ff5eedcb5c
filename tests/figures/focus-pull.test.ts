/**
 * Pulls of focus. Expected values by the thin-lens equation alone (OpenStax, University Physics vol. 3,
 * ch. 2): D = f·(2 + m + 1/m) for the lens by itself, with f going evenly from its printed length to the
 * one that its closest setting follows from.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const CLOSEST = { distanceMm: 310, magnification: 1 };
const FOCAL_MM = 100;
const WIDTH_MM = 36;

/** m of the lens alone with its ring at a distance from the sensor, by halving. */
function magnificationAt(distanceMm: number): number {
  const closestFocal = CLOSEST.distanceMm / (2 + 1 + 1);
  const focal = (m: number) => FOCAL_MM + ((closestFocal - FOCAL_MM) * m) / CLOSEST.magnification;
  let [near, far] = [1, 1e-6];
  for (let step = 0; step < 200; step++) {
    const m = (near + far) / 2;
    if (focal(m) * (2 + m + 1 / m) > distanceMm) far = m;
    else near = m;
  }
  return near;
}

const pulled = (move: string) =>
  changed(EXAMPLE_PLAN, {
    'shots/frost/move': move,
    'preflight/once/focus-ends-marked': 'open',
  });

const figures = (move: string) => coreWith(pulled(move)).figures(PLAN).get('frost')!;

describe('a pull of focus', () => {
  it('goes from mark to mark, and its picture breathes', () => {
    const found = figures('{ kind: focus-pull, from: 0.6 m, to: 0.35 m, duration: 10 s }');
    expect(found.pullTravelMm).toBeCloseTo(250, 6);
    const [from, to] = found.pullFieldsMm as [[number, number], [number, number]];
    expect(from[0]).toBeCloseTo(WIDTH_MM / magnificationAt(600), 6);
    expect(to[0]).toBeCloseTo(WIDTH_MM / magnificationAt(350), 6);
    expect(to[1] / to[0]).toBeCloseTo(20.25 / 36, 9);
  });

  it('goes as far back as it came', () => {
    const there = figures('{ kind: focus-pull, from: 0.6 m, to: 0.35 m }');
    const back = figures('{ kind: focus-pull, from: 0.35 m, to: 0.6 m }');
    expect(back.pullTravelMm).toBe(there.pullTravelMm);
    expect(back.pullFieldsMm).toEqual([...(there.pullFieldsMm as unknown[])].reverse());
  });

  it('ends at the closest setting where the lens was measured to be', () => {
    const found = figures('{ kind: focus-pull, from: 0.6 m, to: closest }');
    expect(found.pullTravelMm).toBeCloseTo(600 - 310, 6);
    expect((found.pullFieldsMm as number[][])[1]![0]).toBeCloseTo(36, 6);
  });

  it('from infinity has no travel that could be told', () => {
    const found = figures('{ kind: focus-pull, from: infinity, to: closest }');
    expect(found.pullTravelMm).toBeNull();
    expect(found.notKnown.pullTravelMm).toMatch(/infinity/);
  });

  it('without an end waits for it', () => {
    const text = pulled('{ kind: focus-pull, from: 0.6 m }');
    expect(coreWith(text).figures(PLAN).get('frost')!.notKnown.pullTravelMm).toBe(
      "needs `to` of frost's move",
    );
    expect(findingsOf(text).filter(({ rule }) => rule === 'not-known')).toHaveLength(1);
  });

  it('is none of a slide', () => {
    const found = figures('{ kind: slide, speed: 0.1 mm/s }');
    expect(found.notKnown.pullTravelMm).toBe('the shot has no focus pull');
  });

  it('is told in the hover of the move', () => {
    const text = pulled('{ kind: focus-pull, from: 0.6 m, to: 0.35 m, duration: 10 s }');
    const line = text.split('\n').findIndex((it) => it.includes('kind: focus-pull'));
    const character = text.split('\n')[line]!.indexOf('pull');
    const { markdown } = coreWith(text).hover(PLAN, { line, character })!;
    expect(markdown).toContain('**250 mm** along the axis');
    expect(markdown).toMatch(/focus breathing \d+%, closer/);
  });
});

describe('a ring setting nearer than the lens goes', () => {
  it.each([
    [
      'shots/frost/ring',
      { 'shots/frost/field': null, 'shots/frost/ring': '0.25 m' },
      'ring: 0.25 m',
    ],
    [
      'the end of a pull',
      { 'shots/frost/move': '{ kind: focus-pull, from: 0.6 m, to: 0.3 m }' },
      'to: 0.3 m',
    ],
  ])('%s is said where it stands, and nothing is worked out from it', (_, change, written) => {
    const text = changed(EXAMPLE_PLAN, change);
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'field-out-of-reach');
    expect(found?.what).toMatch(/its minimum focus is 310 mm/);
    const { start, end } = found!.range;
    const line = text.split('\n')[start.line]!;
    expect(written).toContain(line.slice(start.character, end.character));
    expect(found!.numbers).toMatchObject({ closestMm: 310 });
  });

  it('of a lens that has no closest setting is one too', () => {
    const text = changed(EXAMPLE_PLAN, {
      'kit/lenses/macro-100/closest': null,
      'shots/frost/field': null,
      'shots/frost/ring': '0.5 m',
    });
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'field-out-of-reach');
    expect(found?.what).toMatch(/can't focus at 500 mm: it has no `closest`/);
    expect(coreWith(text).figures(PLAN).get('frost')!.magnification).toBeNull();
  });
});
