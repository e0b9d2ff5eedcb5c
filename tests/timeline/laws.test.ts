/** Laws of the edit: a ramp's source is an integral, lengths add up, handles are never negative. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Exact,
  exact,
  fromWritten,
  minus,
  nearestWhole,
  order,
  plus,
  times,
  toNumber,
  wholeBelow,
  ZERO,
} from '../../shared/timeline/exact.ts';
import { handleSource, splitJoin } from '../../shared/timeline/join.ts';
import { secondsOf } from '../../shared/timeline/length.ts';
import {
  type Ramp,
  slowest,
  slowestWithoutRepeats,
  sourceUsed,
  timeAt,
} from '../../shared/timeline/speed.ts';
import { type OnTrack, onTrack } from '../../shared/timeline/track.ts';

const percent = fc.integer({ min: 1, max: 400_00 }).map((value) => fromWritten(value / 10_000));
const length = fc.integer({ min: 1, max: 600_000 }).map((value) => fromWritten(value / 1000));
const rate = fc.constantFrom(
  exact(24000, 1001),
  exact(24),
  exact(25),
  exact(30000, 1001),
  exact(50),
  exact(60000, 1001),
);

/** The part of a ramp up to this share of its length is a ramp of its own. */
function sourceAfter({ from, to }: Ramp, T: Exact, share: Exact): Exact {
  const there = plus(from, times(minus(to, from), share));
  return sourceUsed({ from, to: there }, times(T, share));
}

function layOnTrack(lengths: readonly Exact[], fps: Exact): readonly OnTrack[] {
  let start = ZERO;
  return lengths.map((each) => {
    const cut = onTrack(start, each, fps);
    start = cut.end;
    return cut;
  });
}

describe('a ramp', () => {
  // Brute force: the speed in the middle of 2,000 slices of the cut, summed.
  it('uses the integral of its speed', () => {
    fc.assert(
      fc.property(percent, percent, length, (from, to, T) => {
        const [a, b, seconds] = [toNumber(from), toNumber(to), toNumber(T)];
        const slices = 2000;
        let sum = 0;
        for (let slice = 0; slice < slices; slice++)
          sum += (a + (b - a) * ((slice + 0.5) / slices)) * (seconds / slices);
        const used = toNumber(sourceUsed({ from, to }, T));
        expect(Math.abs(used / sum - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('of 100 to 25 % over 4 s uses 2.5 s, and half of that time uses 1.625 s', () => {
    // By hand: (1 + 0.25)/2 · 4; 1 · 2 + (0.25 − 1) · 4/(2 · 4).
    const ramp = { from: exact(1), to: exact(1, 4) };
    expect(sourceUsed(ramp, exact(4))).toEqual(exact(5, 2));
    expect(sourceAfter(ramp, exact(4), exact(1, 2))).toEqual(exact(13, 8));
    expect(slowest(ramp)).toEqual(exact(1, 4));
  });

  it('is as much as its parts', () => {
    fc.assert(
      fc.property(percent, percent, length, fc.nat({ max: 1000 }), (from, to, T, thousandths) => {
        const ramp = { from, to };
        const share = exact(thousandths, 1000);
        const middle = plus(from, times(minus(to, from), share));
        const rest = sourceUsed({ from: middle, to }, minus(T, times(T, share)));
        expect(plus(sourceAfter(ramp, T, share), rest)).toEqual(sourceUsed(ramp, T));
      }),
    );
  });

  it('says when a source is used up', () => {
    fc.assert(
      fc.property(percent, percent, length, fc.nat({ max: 1000 }), (from, to, T, thousandths) => {
        const share = exact(thousandths, 1000);
        const t = times(T, share);
        const found = timeAt({ from, to }, T, sourceAfter({ from, to }, T, share));
        expect(Math.abs(found - toNumber(t))).toBeLessThan(1e-6 * Math.max(1, toNumber(T)));
      }),
    );
    expect(timeAt({ from: exact(1), to: exact(1) }, exact(2), exact(5))).toBe(2);
    expect(timeAt({ from: exact(1), to: exact(1) }, exact(2), exact(-5))).toBe(0);
  });
});

describe('the slowest speed without repeated frames', () => {
  // Common practice: 50 fps conformed to 25 is half speed, 120 to 24 a fifth, 59.94 to 29.97 half.
  it.each([
    [exact(25), exact(50), exact(1, 2)],
    [exact(24), exact(120), exact(1, 5)],
    [exact(30000, 1001), exact(60000, 1001), exact(1, 2)],
    [exact(24000, 1001), exact(24), exact(1000, 1001)],
    [exact(25), exact(25), exact(1)],
  ])('is the delivered rate over the recorded one', (delivered, recorded, speed) => {
    expect(slowestWithoutRepeats(delivered, recorded)).toEqual(speed);
  });
});

describe('cuts on frames', () => {
  it('leave no gap and add up to the whole, whatever their lengths', () => {
    fc.assert(
      fc.property(fc.array(length, { minLength: 1, maxLength: 40 }), rate, (lengths, fps) => {
        const track = layOnTrack(lengths, fps);
        const whole = lengths.reduce(plus, ZERO);
        let next = 0;
        for (const cut of track) {
          expect(cut.startFrame).toBe(next);
          next = cut.endFrame;
        }
        expect(next).toBe(nearestWhole(times(whole, fps)));
      }),
    );
  });

  it('of whole frames have just those, after whatever', () => {
    const beats = secondsOf({ amount: 7, unit: 'beats' }, exact(25), { tempo: exact(92) });
    const frames = secondsOf({ amount: 12, unit: 'frames' }, exact(25), undefined);
    if (typeof beats === 'string' || typeof frames === 'string') throw new Error('not seconds');
    const [, second] = layOnTrack([beats, frames], exact(25));
    expect(second!.endFrame - second!.startFrame).toBe(12);
  });
});

describe('a length', () => {
  const music = { tempo: exact(90), bar: 4 };

  it.each([
    [{ amount: 0.4, unit: 's' }, exact(2, 5)],
    [{ amount: 1.5, unit: 'min' }, exact(90)],
    [{ amount: 12, unit: 'frames' }, exact(12, 25)],
    [{ amount: 3, unit: 'beats' }, exact(2)],
    [{ amount: 2, unit: 'bars' }, exact(16, 3)],
  ] as const)('of %o is exact', (written, seconds) => {
    expect(secondsOf(written, exact(25), music)).toEqual(seconds);
  });

  it('says what it lacks', () => {
    expect(secondsOf({ amount: 1, unit: 'frames' }, undefined, music)).toBe('rate');
    expect(secondsOf({ amount: 1, unit: 'beats' }, exact(25), undefined)).toBe('tempo');
    expect(secondsOf({ amount: 1, unit: 'bars' }, exact(25), { tempo: exact(90) })).toBe('bar');
  });
});

describe('handles', () => {
  it('split a dissolve into its two halves', () => {
    expect(splitJoin(12)).toEqual({ before: 6, after: 6 });
    expect(splitJoin(13)).toEqual({ before: 6, after: 7 });
    expect(splitJoin(0)).toEqual({ before: 0, after: 0 });
  });

  it('are never negative', () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 500 }), rate, percent, (frames, fps, speed) => {
        expect(order(handleSource(frames, fps, speed), ZERO)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('exact fractions', () => {
  it('round as they should, below zero too', () => {
    expect([exact(5, 2), exact(-5, 2), exact(7, 3)].map(nearestWhole)).toEqual([3, -2, 2]);
    expect([exact(-5, 2), exact(5, 2)].map(wholeBelow)).toEqual([-3, 2]);
  });

  it('are the decimals that were written', () => {
    expect(fromWritten(0.1 + 0.2)).toEqual(exact(3, 10));
    expect(fromWritten(33.333 / 100)).toEqual(exact(33_333, 100_000));
    expect(fromWritten(1e9 - 1)).toEqual(exact(999_999_999));
  });

  it('of great terms become the nearest double', () => {
    const great = { n: 10n ** 400n, d: 3n * 10n ** 400n };
    expect(toNumber(great)).toBeCloseTo(1 / 3, 15);
    expect(() => exact(1, 0)).toThrow(RangeError);
  });
});
