/** Clips matched to takes by their times alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchClips, type TimedClip, type TimedTake } from '../../shared/clips/match.ts';
import { manyRuns } from '../support/runs.ts';

const take = (key: string, startS: number, lengthS: number | null = null): TimedTake => ({
  ...{ key, startS, lengthS },
  file: null,
});
const clip = (file: string, createdS: number, durationS = 20): TimedClip => ({
  ...{ file, createdS, durationS },
});
const pairsOf = (takes: readonly TimedTake[], clips: readonly TimedClip[]) =>
  matchClips(takes, clips).pairs.map(({ take: key, file }) => `${key}=${file}`);

const THREE = [take('a', 0), take('b', 100), take('c', 350)];

describe('clips and takes', () => {
  it('are matched whatever the clock of the body says', () => {
    for (const ahead of [0, 3600, -7203, 4_711_111]) {
      const clips = [clip('1', ahead + 2), clip('2', ahead + 97), clip('3', ahead + 352)];
      expect(pairsOf(THREE, clips)).toEqual(['a=1', 'b=2', 'c=3']);
      expect(matchClips(THREE, clips).aheadS! - ahead).toBeCloseTo(0, -1);
    }
  });

  it('are matched where files say when they were closed', () => {
    const clips = [clip('1', 20, 20), clip('2', 160, 60), clip('3', 450, 100)];
    expect(pairsOf(THREE, clips)).toEqual(['a=1', 'b=2', 'c=3']);
  });

  it('are matched where some of either are missing', () => {
    expect(pairsOf(THREE, [clip('2', 101), clip('x', 7000), clip('3', 349)])).toEqual([
      'b=2',
      'c=3',
    ]);
  });

  it('are left open where two clocks explain as much', () => {
    // Takes once a minute and a clip too few: it may be the first or the last that is missing.
    const even = [take('a', 0), take('b', 60), take('c', 120)];
    expect(pairsOf(even, [clip('1', 500), clip('2', 560)])).toEqual([]);
  });

  it('are told apart by their lengths', () => {
    const even = [take('a', 0, 10), take('b', 60, 40), take('c', 120, 12)];
    expect(pairsOf(even, [clip('1', 500, 41), clip('2', 560, 11)])).toEqual(['b=1', 'c=2']);
  });

  it('are told apart by a pair that is known', () => {
    const even = [take('a', 0), { ...take('b', 60), file: '1' }, take('c', 120)];
    expect(pairsOf(even, [clip('1', 500), clip('2', 560)])).toEqual(['b=1', 'c=2']);
  });

  it('are no pair where there is one of each and the clock is out', () => {
    expect(pairsOf([take('a', 0)], [clip('1', 3610)])).toEqual(['a=1']);
    expect(pairsOf([take('a', 0)], [clip('1', 1500)])).toEqual([]);
  });

  it('are doubtful where two clips are near one take', () => {
    const clips = [clip('1', 0), clip('2', 95), clip('2b', 106), clip('3', 350)];
    expect(matchClips(THREE, clips)).toMatchObject({
      pairs: [
        { take: 'a', file: '1' },
        { take: 'c', file: '3' },
      ],
      doubtful: [{ take: 'b', files: ['2', '2b'] }],
    });
    expect(matchClips(THREE, [])).toEqual({ pairs: [], doubtful: [], aheadS: null });
  });

  it('are never paired wrongly, whatever is missing', () => {
    const days = fc.record({
      gaps: fc.array(fc.integer({ min: 31, max: 900 }), { minLength: 3, maxLength: 12 }),
      ahead: fc.integer({ min: -90_000, max: 90_000 }),
      jitter: fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 12, maxLength: 12 }),
      lost: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
    });
    let found = 0;
    fc.assert(
      fc.property(days, ({ gaps, ahead, jitter, lost }) => {
        let at = 0;
        const starts = gaps.map((gap) => (at += gap));
        const takes = starts.map((start, index) => take(String(index), start));
        const clips = starts.flatMap((start, index) =>
          lost[index] ? [] : [clip(String(index), start + ahead + jitter[index]!)],
        );
        const pairs = pairsOf(takes, clips);
        const right = clips.map(({ file }) => `${file}=${file}`);
        // With half of the clips there, no other clock explains as many of them.
        if (clips.length * 2 > takes.length && clips.length > 3)
          expect([[], right]).toContainEqual(pairs);
        if (pairs.length > 0) found++;
      }),
      { numRuns: manyRuns(100) },
    );
    expect(found).toBeGreaterThan(30);
  });
});
