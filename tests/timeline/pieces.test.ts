/** Laws of a ramp in pieces: brute force over every frame, with the ramp's own formula in doubles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact, fromWritten, times, toNumber } from '../../shared/timeline/exact.ts';
import { piecesOf } from '../../shared/timeline/pieces.ts';
import { timeMap } from '../../shared/timeline/time-map.ts';

const perFrame = fc
  .tuple(
    fc.integer({ min: 1, max: 40_000 }),
    fc.constantFrom(exact(1), exact(2), exact(5005, 1000)),
  )
  .map(([share, rates]) => times(fromWritten(share / 10_000), rates));

const ramp = fc.record({
  start: fc.integer({ min: 1000, max: 100_000 }),
  frames: fc.integer({ min: 1, max: 400 }),
  from: perFrame,
  to: perFrame,
});

type Ramp = typeof ramp extends fc.Arbitrary<infer R> ? R : never;

/** The integral of a speed that goes evenly from a to b in n frames, and on at both ends. */
function place({ start, frames: n, from, to }: Ramp, at: number): number {
  const [a, b] = [toNumber(from), toNumber(to)];
  if (at < 0) return start + a * at;
  const k = Math.min(at, n);
  return start + a * k + ((b - a) * k * k) / (2 * n) + b * (at - k);
}

const NEAR = 1e-6;

describe('a ramp in pieces', () => {
  it('is nowhere more than half a frame of the clip off, and begins on whole frames', () => {
    fc.assert(
      fc.property(ramp, fc.nat(30), fc.nat(30), (course, before, after) => {
        const pieces = piecesOf(course, {
          from: 0,
          to: course.frames,
          before,
          after,
          rate: exact(25),
        });
        if (pieces === null) {
          // Only what transitions look at can't be met, and only by steep ramps.
          expect(before + after).toBeGreaterThan(0);
          return;
        }
        let next = 0;
        for (const [index, piece] of pieces.entries()) {
          expect(piece.at).toBe(next);
          expect(Number.isInteger(piece.start)).toBe(true);
          next += piece.frames;
          const first = index === 0 ? -before : 0;
          const last = piece.frames + (index === pieces.length - 1 ? after : 0);
          for (let by = first; by <= last; by++) {
            const there = piece.start + toNumber(piece.perFrame) * by;
            expect(Math.abs(there - place(course, piece.at + by))).toBeLessThanOrEqual(0.5 + NEAR);
          }
        }
        expect(next).toBe(course.frames);
      }),
    );
  });

  it("of a single frame has the ramp's own speed there, to half a frame a second", () => {
    const whole = { from: 0, before: 0, after: 0, rate: exact(25) };
    fc.assert(
      fc.property(ramp, (course) => {
        for (const { at, frames, perFrame } of piecesOf(course, { ...whole, to: course.frames })!) {
          const mean = place(course, at + 1) - place(course, at);
          if (frames === 1)
            expect(Math.abs(toNumber(perFrame) - mean) * 25).toBeLessThan(0.5 + NEAR);
        }
      }),
    );
  });

  it('ends in no scrap of a piece where two can share', () => {
    const course = { start: 1000, frames: 60, from: exact(1), to: exact(1, 4) };
    const lengths = (frames: number): readonly number[] =>
      piecesOf(
        { ...course, frames },
        { from: 0, to: frames, before: 0, after: 0, rate: exact(25) },
      )!
        .map((piece) => piece.frames)
        .slice(-2);
    for (let frames = 40; frames <= 200; frames++) {
      const [previous, last] = lengths(frames);
      expect(last! * 4, `${frames} frames`).toBeGreaterThanOrEqual(previous!);
    }
  });

  it('that begins before the cut meets everything', () => {
    fc.assert(
      fc.property(ramp, fc.nat(30), fc.nat(30), (course, before, after) => {
        const whole = {
          ...{ from: -before, to: course.frames + after, before: 0, after: 0 },
          rate: exact(30_000, 1001),
        };
        const pieces = piecesOf(course, whole)!;
        const length = pieces.reduce((sum, { frames }) => sum + frames, 0);
        expect(length).toBe(before + course.frames + after);
      }),
    );
  });
});

it('a time map is nowhere more than an eighth of a frame of the clip off', () => {
  fc.assert(
    fc.property(ramp, fc.nat(30), fc.nat(30), (course, before, after) => {
      const points = timeMap(course, before, course.frames + after);
      expect(points[0]!.at + before).toBe(0);
      expect(points.at(-1)?.at).toBe(course.frames + after);
      points.slice(1).forEach((point, index) => {
        const last = points[index]!;
        expect(point.at).toBeGreaterThan(last.at);
        const rise = (toNumber(point.place) - toNumber(last.place)) / (point.at - last.at);
        for (let at = last.at; at <= point.at; at++) {
          const there = toNumber(last.place) + rise * (at - last.at);
          expect(Math.abs(there - place(course, at))).toBeLessThanOrEqual(1 / 8 + NEAR);
        }
      });
    }),
  );
});
