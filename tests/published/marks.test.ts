/** The series that shutters, sensitivities and apertures are marked in, against preferred numbers. */
import { describe, expect, it } from 'vitest';
import { MARKED_ISO, nearestIso } from '../../shared/exposure/remedies.ts';
import { isNearMark, MARKED_SHUTTER_RECIPROCALS } from '../../shared/exposure/shutter-marks.ts';

/**
 * The series R10 of ISO 3 in its rounded form R'10, from memory: ten preferred numbers to a decade,
 * which are third stops since 2^10 is nearly 10^3.
 */
const R10 = [1, 1.25, 1.6, 2, 2.5, 3.2, 4, 5, 6.3, 8];

/** Common practice: 6.4, twice 3.2, is marked in the place of 6.3. */
const marked = (decade: number): readonly number[] =>
  R10.map((each) => (each === 6.3 ? 6.4 : each) * 10 ** decade);

const between = (series: readonly number[], from: number, to: number): readonly number[] =>
  series.filter((each) => each >= from && each <= to).map((each) => Number(each.toPrecision(6)));

describe('marked shutter speeds', () => {
  // Slower than 1/125 s, shutters are marked in numbers of their own. Common practice.
  it('are the numbers of common practice down to 1/80 s', () => {
    const slow = [2, 2.5, 3, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80];
    expect(MARKED_SHUTTER_RECIPROCALS.slice(0, slow.length)).toEqual(slow);
  });

  it('are preferred numbers (ISO 3) from 1/100 to 1/8000 s', () => {
    const fast = between([...marked(2), ...marked(3)], 100, 8000);
    expect(MARKED_SHUTTER_RECIPROCALS.slice(17)).toEqual(fast);
  });

  // Thin series of third stops, by the definition of a stop: brute force. 1/15 and 1/60 are off most.
  it('are third stops, one after the other', () => {
    for (const [index, reciprocal] of MARKED_SHUTTER_RECIPROCALS.entries())
      expect(Math.abs(Math.log2(reciprocal) - (1 + index / 3))).toBeLessThan(0.1);
  });

  // Common practice: 1/48 s is set as 1/50 s, 1/120 s as 1/125 s; 1/45 s has no mark of third stops.
  it.each([
    [1 / 48, true],
    [1 / 50, true],
    [1 / 120, true],
    [1 / 45, false],
    [1 / 54, false],
    [1 / 70, false],
  ])('%f s is near one: %s', (seconds, isNear) => {
    expect(isNearMark(seconds)).toBe(isNear);
  });
});

describe('marked sensitivities', () => {
  // ISO 12232 gives speeds in the series of preferred numbers; from 12,800 up it doubles. From memory.
  it('are preferred numbers up to 10,000 (ISO 3), and doubled ones above', () => {
    const low = between([...marked(1), ...marked(2), ...marked(3), 10_000], 25, 10_000);
    const high = [6400, 8000, 10_000].flatMap((each) => [2, 4, 8, 16].map((times) => each * times));
    expect(MARKED_ISO).toEqual([
      ...low,
      ...between(
        high.sort((a, b) => a - b),
        12_800,
        102_400,
      ),
    ]);
  });

  // By the definition of a stop, brute force: the nearest is half a third of a stop away at most.
  it('are near every value between them', () => {
    for (let iso = 25; iso < 102_400; iso *= 1.07)
      expect(Math.abs(Math.log2(nearestIso(iso) / iso))).toBeLessThan(1 / 6 + 0.02);
  });
});
