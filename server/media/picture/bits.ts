/** Bits of a coded header, one after the other (ITU-T H.264, 7.2 and 9.1). */

/** Past the end of the bytes. */
export class NoMoreBits extends Error {}

export class Bits {
  readonly #bytes: Uint8Array;
  #at = 0;

  /** @param unit a unit of the stream; the bytes that keep it from looking like a start are left out */
  constructor(unit: Uint8Array) {
    const bytes: number[] = [];
    let zeros = 0;
    for (const byte of unit) {
      if (zeros >= 2 && byte === 3) {
        zeros = 0;
        continue;
      }
      zeros = byte === 0 ? zeros + 1 : 0;
      bytes.push(byte);
    }
    this.#bytes = Uint8Array.from(bytes);
  }

  /** @param count at most 32 */
  read(count: number): number {
    let value = 0;
    for (let index = 0; index < count; index++, this.#at++) {
      const byte = this.#bytes[this.#at >> 3];
      if (byte === undefined) throw new NoMoreBits();
      value = value * 2 + ((byte >> (7 - (this.#at & 7))) & 1);
    }
    return value;
  }

  skip(count: number): void {
    this.#at += count;
  }

  /** Before the last bit that is set, which ends the unit. */
  get hasMore(): boolean {
    const last = this.#bytes.findLastIndex((byte) => byte !== 0);
    if (last < 0) return false;
    const trailing = 31 - Math.clz32(this.#bytes[last]! & -this.#bytes[last]!);
    return this.#at < 8 * last + 7 - trailing;
  }

  /** Exp-Golomb. */
  unsigned(): number {
    let zeros = 0;
    while (this.read(1) === 0) if (++zeros > 31) throw new NoMoreBits();
    return 2 ** zeros - 1 + this.read(zeros);
  }

  signed(): number {
    const value = this.unsigned();
    return value % 2 === 1 ? (value + 1) / 2 : -value / 2;
  }
}

/** Units of a stream that are parted by start codes (Annex B of H.264 and H.265). */
export function unitsIn(stream: Uint8Array): readonly Uint8Array[] {
  const starts: number[] = [];
  for (let at = 0; at + 3 <= stream.length; at++)
    if (stream[at] === 0 && stream[at + 1] === 0 && stream[at + 2] === 1) starts.push(at + 3);
  return starts.map((start, index) => stream.subarray(start, (starts[index + 1] ?? Infinity) - 3));
}
