/** What recordings take up, against data rates and media that others published. */
import { describe, expect, it } from 'vitest';
import { meanBitsPerS, recordedBytes } from '../../shared/recording/bytes.ts';

const GB = 1e9;
const HOUR_S = 3600;

describe('ProRes at 1920 x 1080 and 29.97 fps', () => {
  // The codec's published table of target data rates (ProRes white paper): 422 HQ, 422, 422 LT and
  // 422 Proxy, in Mb/s and GB/h. From memory, as the project's own notes carry it.
  it.each([
    [220, 99],
    [147, 66.15],
    [102, 45.9],
    [45, 20.25],
  ])('%i Mb/s is %f GB an hour', (megabits, gigabytes) => {
    expect(recordedBytes(megabits * 1e6, HOUR_S)).toBe(Math.round(gigabytes * GB));
  });
});

describe('Compact Disc Digital Audio (IEC 60908)', () => {
  const BITS_PER_S = 44_100 * 16 * 2;

  it('74 minutes are 333,000 sectors of 2,352 bytes', () => {
    expect(recordedBytes(BITS_PER_S, 74 * 60)).toBe(333_000 * 2352);
  });

  it('75 sectors a second are 1,411.2 kb/s', () => {
    expect(meanBitsPerS(75 * 2352, 1)).toBe(1_411_200);
  });
});

describe('digital video on tape, 625 lines (IEC 61834-2)', () => {
  // A frame is 12 tracks of 150 blocks of 80 bytes as they go over an interface: 144,000 bytes. An
  // hour of it is the "13 GB an hour" of the trade (common practice).
  it('an hour at 25 fps is 12.96 GB', () => {
    expect(recordedBytes(144_000 * 25 * 8, HOUR_S)).toBe(12.96 * GB);
  });
});

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
