/** When a server that has ended is started again, and when no longer. */
import { describe, expect, test } from 'vitest';
import { FailedStarts, MOST_FAILED_STARTS } from '../../client/failed-starts.ts';

const AGAIN = 'start again';

describe('starts of the server', () => {
  test('one that never comes up is given up', () => {
    const starts = new FailedStarts(0);
    const answers = Array.from({ length: MOST_FAILED_STARTS }, (_, count) =>
      starts.ended((count + 1) * 400),
    );
    expect(answers.slice(0, -1)).toEqual(answers.slice(0, -1).map(() => AGAIN));
    expect(answers.at(-1)).toBe('give up');
  });

  test('one that works is started again however soon and often it ends', () => {
    const starts = new FailedStarts(0);
    for (let now = 1; now <= 1_000; now++) {
      starts.worked();
      expect(starts.ended(now)).toBe(AGAIN);
    }
  });

  test('work counts for the start before it only', () => {
    const starts = new FailedStarts(0);
    starts.worked();
    expect(starts.ended(10)).toBe(AGAIN);
    const answers = Array.from({ length: MOST_FAILED_STARTS }, (_, count) =>
      starts.ended(20 + count),
    );
    expect(answers.at(-1)).toBe('give up');
  });

  test('one that lives long without a plan to check has not failed', () => {
    const starts = new FailedStarts(0);
    for (let hour = 1; hour <= 2 * MOST_FAILED_STARTS; hour++)
      expect(starts.ended(hour * 3_600_000)).toBe(AGAIN);
  });

  test('started by hand it has all its tries again', () => {
    const starts = new FailedStarts(0);
    for (let now = 1; now <= MOST_FAILED_STARTS; now++) starts.ended(now);
    expect(starts.ended(50)).toBe('give up');
    starts.startedByHand(60);
    expect(starts.ended(70)).toBe(AGAIN);
  });
});
