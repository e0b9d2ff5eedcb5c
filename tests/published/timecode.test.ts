/**
 * Timecode by SMPTE ST 12-1, frame for frame over a whole day, against the npm package
 * smpte-timecode, and against the frame that FFmpeg counts a timecode as.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Timecode from 'smpte-timecode';
import { describe, expect, it } from 'vitest';
import { rational } from '../../shared/quantity/rational.ts';
import { timecode } from '../../shared/timeline/timecode.ts';

const NTSC = rational(30000, 1001);
const NTSC_DOUBLE = rational(60000, 1001);

const PAIRS = Array.from({ length: 60 }, (_, number) => String(number).padStart(2, '0'));

// SMPTE ST 12-1, as another program counts it.
describe('every frame of a day', () => {
  it.each([
    ['29.97', NTSC, 29.97, true, 2_589_408],
    ['59.94', NTSC_DOUBLE, 59.94, true, 5_178_816],
    ['25', rational(25), 25, false, 25 * 86_400],
    ['24', rational(24), 24, false, 24 * 86_400],
  ] as const)('at %s is what smpte-timecode says', (_, rate, theirs, drops, perDay) => {
    const other = new Timecode(0, theirs, drops);
    const wrong: string[] = [];
    for (let frame = 0; frame < perDay; frame++) {
      // Their own printing of 59.94 leaves the frames' mark to the reader, ours says that it drops.
      const clock = `${PAIRS[other.hours]}:${PAIRS[other.minutes]}:${PAIRS[other.seconds]}`;
      const said = `${clock}${drops ? ';' : ':'}${PAIRS[other.frames]}`;
      if (timecode(frame, rate) !== said) wrong.push(`${frame}: ${said}`);
      other.add(1);
    }
    expect(wrong.slice(0, 5)).toEqual([]);
    expect(timecode(perDay, rate)).toBe(`00:00:00${drops ? ';' : ':'}00`);
    expect(timecode(-1, rate)).toBe(timecode(perDay - 1, rate));
  });
});

/**
 * The frame that FFmpeg counts a timecode as: one file a timecode, and the number that its timecode
 * track holds (QuickTime File Format: the sample is the frame number, 32 bits).
 */
function countedByFfmpeg(rate: string, starts: readonly string[]): readonly number[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'timecode-'));
  try {
    const fileOf = (index: number) => path.join(folder, `${index}.mov`);
    execFileSync('ffmpeg', [
      ...['-v', 'error', '-f', 'lavfi', '-i', `color=size=16x16:rate=${rate}:duration=0.1`],
      ...starts.flatMap((start, index) => [
        ...['-map', '0', '-frames:v', '1', '-c:v', 'mpeg4', '-timecode', start, fileOf(index)],
      ]),
    ]);
    return starts.map((_, index) => {
      const file = readFileSync(fileOf(index));
      // The timecode track is the last: its table of offsets has one entry behind the count.
      const offset = file.readUInt32BE(file.lastIndexOf('stco') + 12);
      return file.readUInt32BE(offset);
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// By FFmpeg, driven; from memory of the QuickTime File Format.
describe('FFmpeg counts the timecode as the same frame', () => {
  it.each([
    ['30000/1001', NTSC, 1798],
    ['60000/1001', NTSC_DOUBLE, 3596],
    ['25', rational(25), 1500],
    ['24000/1001', rational(24000, 1001), 1440],
  ] as const)('at %s, around minutes and over the day', (written, rate, minute) => {
    const around = [1, 2, 9, 10, 11, 600, 1439].flatMap((minutes) =>
      [-2, -1, 0, 1, 2, 3, 18].map((near) => minutes * minute + near),
    );
    const overTheDay = Array.from({ length: 50 }, (_, index) => index * 41_231);
    const frames = [0, ...around, ...overTheDay];
    const said = frames.map((frame) => timecode(frame, rate)!);
    expect(countedByFfmpeg(written, said)).toEqual(frames);
  });
});

describe('published values', () => {
  // SMPTE ST 12-1 drop-frame count: no numbers 0 and 1 in a minute that ten does not divide.
  it.each([
    [1799, '00:00:59;29'],
    [1800, '00:01:00;02'],
    [17_982, '00:10:00;00'],
    [2_589_408, '00:00:00;00'],
  ])('29.97: frame %i is %s', (frame, said) => {
    expect(timecode(frame, NTSC)).toBe(said);
  });

  it('has none at a rate that the standard does not count', () => {
    for (const rate of [rational(25, 2), rational(1000, 91), rational(15), rational(25000, 1001)])
      expect(timecode(10, rate)).toBeUndefined();
  });
});
