import type { Readable } from 'node:stream';

/**
 * A stream in pieces of one length, each with memory of its own; the last may be shorter. It is
 * read no faster than the pieces are used.
 */
export async function inPieces(
  stream: Readable,
  length: number,
  use: (piece: Uint8Array) => void,
): Promise<void> {
  let [piece, filled] = [new Uint8Array(length), 0];
  for await (const some of stream as AsyncIterable<Uint8Array>) {
    for (let at = 0; at < some.length; ) {
      const taken = Math.min(length - filled, some.length - at);
      piece.set(some.subarray(at, at + taken), filled);
      [filled, at] = [filled + taken, at + taken];
      if (filled < length) continue;
      use(piece);
      [piece, filled] = [new Uint8Array(length), 0];
    }
  }
  if (filled > 0) use(piece.subarray(0, filled));
}
