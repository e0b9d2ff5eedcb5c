/** How pictures are stored, by the headers of their coding. */
import type { ClipPicture } from '../../../shared/clips/facts.ts';
import { NoMoreBits } from './bits.ts';
import { dnxPicture, jpegPicture, proresPicture } from './frames.ts';
import { h264Picture } from './h264.ts';
import { hevcPicture } from './hevc.ts';

/**
 * @param codec its family
 * @param description the coding's own record in the container; null: it has none
 * @param first the first frame, or its start
 * @param height of the clip
 */
export function codedPicture(
  codec: string,
  description: Uint8Array | null,
  first: Uint8Array,
  height: number,
): ClipPicture {
  try {
    if (codec === 'h264') return h264Picture(description, first);
    if (codec === 'hevc') return hevcPicture(description, first);
  } catch (cause) {
    // A header that ends early says nothing; what it said until then may be wrong.
    if (cause instanceof NoMoreBits) return {};
    throw cause;
  }
  if (codec === 'prores') return proresPicture(first);
  if (codec === 'dnxhd') return dnxPicture(first);
  if (codec === 'mjpeg') return jpegPicture(first, height);
  return {};
}
