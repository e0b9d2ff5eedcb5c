/** What a recording takes up. */

const BITS_PER_BYTE = 8;

/**
 * Bytes = b·t/8: a recording of constant bit rate, or of that mean.
 *
 * @param bitsPerS b, bit/s, picture, sound and container together; positive
 * @param seconds t, s; positive
 * @returns bytes, not rounded. Prefixes of bit rates and cards are decimal (IEC 80000-13: k, M and G
 * are powers of ten): 60 Mb/s for 60 s is 450 MB.
 * @throws RangeError where a number is negative or not finite
 */
export function recordedBytes(bitsPerS: number, seconds: number): number {
  for (const value of [bitsPerS, seconds])
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError('bit rate and time are from 0 up');
  return (bitsPerS * seconds) / BITS_PER_BYTE;
}

/**
 * Mean bit rate of what was recorded, from what it takes up: the nominal rate in a file's header is
 * what the encoder was asked for.
 *
 * @param bytes from 0 up
 * @param seconds positive
 * @returns bit/s
 * @throws RangeError where bytes are negative, the time isn't positive, or a number isn't finite
 */
export function meanBitsPerS(bytes: number, seconds: number): number {
  if (!(bytes >= 0 && seconds > 0 && Number.isFinite(bytes) && Number.isFinite(seconds)))
    throw new RangeError('bytes are from 0 up and the time is positive');
  return (bytes * BITS_PER_BYTE) / seconds;
}
