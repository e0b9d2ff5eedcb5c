/**
 * Size of a picture from its header, for stacks that are finished elsewhere: JPEG (ISO/IEC 10918-1),
 * PNG (ISO/IEC 15948) and TIFF 6.0 with its 64-bit form. No pixel is read.
 */
import type { FileHandle } from 'node:fs/promises';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { later } from '../../shared/words/message.ts';
import { codeAt, readAt } from './bytes.ts';
import { tiffSize } from './tiff.ts';
import { Unreadable } from './unreadable.ts';

type Kind = 'jpeg' | 'png' | 'tiff';

/** @param head the first 12 bytes; null: it is no picture of these kinds */
export function pictureKind(head: DataView): Kind | null {
  if (head.byteLength < 4) return null;
  const first = head.getUint32(0);
  if (first >>> 8 === 0xffd8ff) return 'jpeg';
  if (first === 0x89504e47) return 'png';
  // "II" or "MM", and 42 or 43 in that order of bytes.
  return [0x49492a00, 0x49492b00, 0x4d4d002a, 0x4d4d002b].includes(first) ? 'tiff' : null;
}

type PictureFacts = Pick<ClipFacts, 'size' | 'codec' | 'durationS' | 'rate' | 'isPicture'>;

export async function pictureFacts(
  file: FileHandle,
  bytes: number,
  kind: Kind,
): Promise<PictureFacts> {
  const size = await SIZES[kind](file, bytes);
  if (!(size.width > 0 && size.height > 0)) throw new Unreadable(later`its header is broken`);
  return { size, codec: kind, durationS: 0, rate: null, isPicture: true };
}

type Size = ClipFacts['size'];

const SIZES: Readonly<Record<Kind, (file: FileHandle, bytes: number) => Promise<Size>>> = {
  jpeg: jpegSize,
  png: pngSize,
  tiff: tiffSize,
};

/** More segments than any picture has: a header that never ends is broken. */
const MOST_SEGMENTS = 4000;

async function jpegSize(file: FileHandle, bytes: number): Promise<Size> {
  let at = 2;
  for (let count = 0; count < MOST_SEGMENTS; count++) {
    const segment = await readAt(file, at, 9);
    if (segment.byteLength < 9 || segment.getUint8(0) !== 0xff) break;
    const marker = segment.getUint8(1);
    if (isFrame(marker)) {
      if (!(await endsWith(file, bytes, 'ÿÙ')))
        throw new Unreadable(later`it is cut off: its end is missing`);
      return { width: segment.getUint16(7), height: segment.getUint16(5) };
    }
    // A marker may be filled up with further FF bytes.
    at += marker === 0xff ? 1 : 2 + segment.getUint16(2);
  }
  throw new Unreadable(later`its header is broken`);
}

/** Start of a frame: C0 to CF without C4, C8 and CC, which are tables and an extension. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

async function pngSize(file: FileHandle, bytes: number): Promise<Size> {
  const head = await readAt(file, 8, 16);
  if (head.byteLength < 16 || codeAt(head, 4) !== 'IHDR')
    throw new Unreadable(later`its header is broken`);
  if (!(await endsWith(file, bytes, 'IEND')))
    throw new Unreadable(later`it is cut off: its end is missing`);
  return { width: head.getUint32(8), height: head.getUint32(12) };
}

/** Some programs write a little behind the end. */
const TAIL_BYTES = 65_536;

/** @param mark in Latin-1 */
async function endsWith(file: FileHandle, bytes: number, mark: string): Promise<boolean> {
  const from = Math.max(0, bytes - TAIL_BYTES);
  const { buffer, byteLength } = await readAt(file, from, bytes - from);
  return Buffer.from(buffer as ArrayBuffer, 0, byteLength).includes(mark, 0, 'latin1');
}
