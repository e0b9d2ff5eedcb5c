/** What recordings take up, against data rates and media that others published. */
import { describe, expect, it } from 'vitest';
import { meanBitsPerS, recordedBytes } from '../../shared/recording/bytes.ts';

const GB = 1e9;
const HOUR_S = 3600;

describe('ProRes at 1920 x 1080', () => {
  // Both columns of the codec's published table of target data rates (its white paper, from memory):
  // Mb/s, and GB an hour in whole numbers, of 422 HQ, 422, 422 LT and 422 Proxy.
  it.each([
    ['23.976 fps', [176, 117, 82, 36], [79, 53, 37, 16]],
    ['25 fps', [184, 122, 85, 38], [83, 55, 38, 17]],
    ['29.97 fps', [220, 147, 102, 45], [99, 66, 46, 20]],
    ['50 fps', [367, 245, 170, 76], [165, 110, 77, 34]],
    ['59.94 fps', [440, 293, 204, 91], [198, 132, 92, 41]],
  ])('%s: GB an hour as the table has them', (_, megabits, gigabytes) => {
    const found = megabits.map((rate) => recordedBytes(rate * 1e6, HOUR_S) / GB);
    expect(found.map(Math.round)).toEqual(gigabytes);
  });
});

describe('Compact Disc Digital Audio (IEC 60908)', () => {
  const BITS_PER_S = 44_100 * 16 * 2;

  it('74 minutes are 333,000 sectors of 2,352 bytes', () => {
    expect(recordedBytes(BITS_PER_S, 74 * 60)).toBe(333_000 * 2352);
  });

  it('75 sectors a second are 1,411.2 kb/s', () => {
    expect(meanBitsPerS(75 * 2352, 1)).toBe(1_411_200);
    expect(meanBitsPerS(333_000 * 2352, 74 * 60)).toBe(1_411_200);
  });

  it('a sector is read in less than a second and is 2,352 bytes all the same', () => {
    expect(recordedBytes(BITS_PER_S, 1 / 75)).toBeCloseTo(2352, 9);
  });
});

describe('digital video on tape, 625 lines (IEC 61834-2)', () => {
  // A frame is 12 tracks of 150 blocks of 80 bytes as they go over an interface: 144,000 bytes. An
  // hour of it is the "13 GB an hour" of the trade (common practice).
  it('an hour at 25 fps is 12.96 GB', () => {
    expect(recordedBytes(144_000 * 25 * 8, HOUR_S)).toBe(12.96 * GB);
  });
});

// Common practice: neither a rate, a time nor a size of a recording is negative or endless.
describe('what has no sum', () => {
  it.each([
    [-1, 1],
    [1, -1],
    [Number.NaN, 1],
    [1, Number.POSITIVE_INFINITY],
  ])('%f bit/s for %f s', (bits, seconds) => {
    expect(() => recordedBytes(bits, seconds)).toThrow(RangeError);
  });

  it.each([
    [-1, 1],
    [1, 0],
    [Number.POSITIVE_INFINITY, 1],
  ])('%f bytes in %f s', (bytes, seconds) => {
    expect(() => meanBitsPerS(bytes, seconds)).toThrow(RangeError);
  });
});
