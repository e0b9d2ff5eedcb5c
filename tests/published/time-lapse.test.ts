/** Frames at intervals, against worked examples of the trade and its rule for pans. */
import { describe, expect, it } from 'vitest';
import { crossingS, framesIn } from '../../shared/recording/interval.ts';

const HOUR_S = 3600;

describe('interval, event and clip', () => {
  // Worked examples as guides to time-lapse give them (common practice, from memory): frames = rate
  // of the clip times its length, interval = length of the event over frames.
  it.each([
    ['a sunset of 1 h as 10 s at 30 fps', 1 * HOUR_S, 12, 300, 30, 10],
    ['clouds for 20 min every 4 s, at 24 fps', 20 * 60, 4, 300, 24, 12.5],
    ['a flower for 24 h every 3 min, at 24 fps', 24 * HOUR_S, 180, 480, 24, 20],
    ['a crystal for 3 h every 20 s, at 25 fps', 3 * HOUR_S, 20, 540, 25, 21.6],
  ])('%s', (_, eventS, intervalS, frames, rate, clipS) => {
    expect(framesIn(eventS, intervalS)).toBe(frames);
    expect(framesIn(eventS, intervalS) / rate).toBeCloseTo(clipS, 12);
  });

  it('an interval that is not whole in binary still fits', () => {
    // By hand: 0.3 s is three tenths.
    expect(framesIn(0.3, 0.1)).toBe(3);
    expect(framesIn(3600, 0.1)).toBe(36_000);
  });

  it('a rest that is no whole interval has no frame', () => {
    expect(framesIn(59.9, 20)).toBe(2);
    expect(framesIn(19, 20)).toBe(0);
  });
});

describe('the rule for pans', () => {
  // Common practice (the seven-second rule, from memory): what takes 7 s across the picture moves
  // 1/168 of the width per frame at 24 fps.
  it('7 s at 24 fps are 168 steps', () => {
    expect(crossingS(1, 1, 168, 24)).toBe(7);
  });

  it('3 h of growth at 4 mm in 40 mm wide would need ten clips to cross', () => {
    // By hand: 4 mm in 21.6 s is a tenth of the width.
    expect(crossingS(4 / (3 * HOUR_S), 20, 40, 25)).toBeCloseTo(216, 9);
  });
});

// Common practice: no interval, length or rate is zero, negative or endless.
it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('%f has no frames', (bad) => {
  expect(() => framesIn(bad, 1)).toThrow(RangeError);
  expect(() => framesIn(1, bad)).toThrow(RangeError);
  expect(() => crossingS(1, bad, 1, 1)).toThrow(RangeError);
});
