/** Codings whose every frame says what it is: the headers of the first one. */
import type { ClipChroma, ClipPicture } from '../../../shared/clips/facts.ts';
import { coloursOf } from './h264.ts';

const codeAt = (bytes: Uint8Array, at: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + 4));

/** SMPTE RDD 36, 5.1: the frame's header begins after its size and "icpf". */
export function proresPicture(frame: Uint8Array): ClipPicture {
  if (frame.length < 28 || codeAt(frame, 4) !== 'icpf') return {};
  const flags = frame[20]!;
  const isFull = flags >> 6 === 3;
  return {
    // Of 4:2:2 decoders give 10 bits, of 4:4:4 12.
    bitDepth: isFull ? 12 : 10,
    chroma: isFull ? '4:4:4' : '4:2:2',
    isInterlaced: ((flags >> 2) & 3) !== 0,
    ...coloursOf(frame[22]!, frame[23]!),
  };
}

const LEAST_DNX = 0x2d;

/** SMPTE ST 2019-1, 8.2: the header of a VC-3 frame. */
export function dnxPicture(frame: Uint8Array): ClipPicture {
  if (frame.length < LEAST_DNX || frame[2] !== 2 || frame[3] !== 0x80) return {};
  const bitDepth = [8, 8, 10, 12][frame[0x21]! >> 5];
  const chroma = (frame[0x2c]! & 0x40) !== 0 ? '4:4:4' : '4:2:2';
  return { ...(bitDepth && { bitDepth }), chroma, isInterlaced: (frame[5]! & 2) !== 0 };
}

/** Start of frame: baseline, extended, progressive. */
const FRAME_STARTS = new Set([0xc0, 0xc1, 0xc2]);

/**
 * ITU-T T.81, B.2.2.
 *
 * @param height of the clip: a picture of half of it is a field
 */
export function jpegPicture(frame: Uint8Array, height: number): ClipPicture {
  for (let at = 2; at + 9 < frame.length && frame[at] === 0xff; ) {
    const length = frame[at + 2]! * 256 + frame[at + 3]!;
    if (FRAME_STARTS.has(frame[at + 1]!)) {
      const chroma = jpegChroma(frame, at + 9);
      const lines = frame[at + 5]! * 256 + frame[at + 6]!;
      return {
        bitDepth: frame[at + 4]!,
        ...(chroma && { chroma }),
        isInterlaced: lines * 2 === height,
      };
    }
    if (length < 2) break;
    at += 2 + length;
  }
  return {};
}

/** By the sampling factors of the first and the second component. */
function jpegChroma(frame: Uint8Array, at: number): ClipChroma | null {
  if (frame[at] === 1) return '4:0:0';
  const [own = 0, other = 0] = [frame[at + 2], frame[at + 5]];
  if (other === 0) return null;
  const across = (own >> 4) / (other >> 4);
  const down = (own & 15) / (other & 15);
  if (down === 2) return across === 2 ? '4:2:0' : null;
  return across === 1 ? '4:4:4' : across === 2 ? '4:2:2' : across === 4 ? '4:1:1' : null;
}
