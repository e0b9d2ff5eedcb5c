/** Beats in frames, against click-track tables of film scoring at 24 fps; and the laws of speeds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beatAt, framesFromBeat, framesPerBeat, nearestBeat } from '../../shared/timeline/beats.ts';
import { exact, fromWritten, nearestWhole, times, toNumber } from '../../shared/timeline/exact.ts';

const FILM = exact(24);

describe('click tables', () => {
  // A click of f frames is 1440/f beats a minute at 24 fps; the eighths behind the hyphen are of a
  // frame: 12-2/8 is 12.25 frames, 117.55 bpm. Common practice of film scoring.
  it.each([
    ['24-0/8', 24, 60],
    ['12-0/8', 12, 120],
    ['12-2/8', 12.25, 117.55],
    ['10-0/8', 10, 144],
    ['14-4/8', 14.5, 99.31],
    ['16-0/8', 16, 90],
    ['18-0/8', 18, 80],
    ['20-0/8', 20, 72],
  ])('a click of %s is %f frames at %f bpm', (_, frames, bpm) => {
    expect(toNumber(framesPerBeat(fromWritten(bpm), FILM))).toBeCloseTo(frames, 2);
    expect(toNumber(framesPerBeat(fromWritten(bpm), FILM))).toBeCloseTo(1440 / bpm, 10);
  });
});

describe('the nearest beat', () => {
  const tempo = fc.integer({ min: 20_00, max: 300_00 }).map((hundredths) => hundredths / 100);

  // Brute force: every beat up to well past the time, the nearest of them picked.
  it('is the nearest of all beats', () => {
    fc.assert(
      fc.property(tempo, fc.nat({ max: 3000 }), fc.nat({ max: 5000 }), (bpm, first, frame) => {
        const music = { tempo: fromWritten(bpm), firstBeat: fromWritten(first / 1000) };
        const rate = exact(25);
        const distances = Array.from(
          { length: Math.ceil(((frame / 25) * bpm) / 60) + 2 },
          (_, beat) => frame - 25 * (first / 1000 + (beat * 60) / bpm),
        );
        const nearest = distances.reduce((best, next) =>
          Math.abs(next) < Math.abs(best) - 1e-9 ? next : best,
        );
        expect(Math.abs(framesFromBeat(music, frame, rate))).toBeCloseTo(Math.abs(nearest), 6);
      }),
    );
  });

  it('of a beat’s own frame is that beat, half a frame off at most, an hour into the film', () => {
    const music = { tempo: fromWritten(92), firstBeat: fromWritten(0.4) };
    const rate = exact(30000, 1001);
    for (const beat of [0, 1, 2, 3, 100, 5520]) {
      const frame = nearestWhole(times(beatAt(music, beat), rate));
      expect(nearestBeat(music, beatAt(music, beat))).toBe(beat);
      expect(Math.abs(framesFromBeat(music, frame, rate))).toBeLessThanOrEqual(0.5);
    }
  });
});
