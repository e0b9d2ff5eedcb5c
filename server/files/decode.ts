/** Bytes as text: UTF-8 or nothing, and where it is nothing, the line where it stops being it. */
import type { Position } from '../../shared/api/located.ts';

/** Files beyond this are named and not read. */
export const MOST_BYTES = 4 * 1024 * 1024;

export type Decoded =
  | { readonly ok: true; readonly text: string }
  | {
      readonly ok: false;
      /** Offset of the first byte that is no UTF-8. */
      readonly offset: number;
      readonly at: Position;
      /** The text with U+FFFD for what could not be read; null where it is another encoding. */
      readonly lenient: string | null;
    };

/** A byte order mark is kept: the core reads it as part of the text. */
const strict = (): TextDecoder => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const lenient = (): TextDecoder => new TextDecoder('utf-8', { ignoreBOM: true });

export function decode(bytes: Uint8Array): Decoded {
  try {
    return { ok: true, text: strict().decode(bytes) };
  } catch {
    const offset = firstBadByte(bytes);
    const before = lenient()
      .decode(bytes.subarray(0, offset))
      .split(/\r\n|\r|\n/);
    const at = { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
    return { ok: false, offset, at, lenient: isUtf16(bytes) ? null : lenient().decode(bytes) };
  }
}

/** By halving: a beginning of the bytes decodes until it holds the bad one. */
function firstBadByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length + 1;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodes(bytes.subarray(0, middle), { stream: true })) good = middle;
    else bad = middle;
  }
  // A sequence that breaks off is noticed at the byte after it: back to where it began.
  while (good > 0 && !decodes(bytes.subarray(0, good))) good--;
  return good;
}

const decodes = (bytes: Uint8Array, options?: { stream: boolean }): boolean => {
  try {
    strict().decode(bytes, options);
    return true;
  } catch {
    return false;
  }
};

const isUtf16 = (bytes: Uint8Array): boolean =>
  (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
