/** A traced frame as a picture for the screen, and as a file. */
import { encode } from 'fast-png';
import { screenPart } from '../film/screen.ts';
import type { FramePicture } from './trace.ts';

/** Steps of the table from linear light to the screen's. */
const STEPS = 4096;

/** Linear light up to which tones are left as they are, a stop and a half over mid-grey. */
const SHOULDER = 0.5;

/**
 * Linear light of the screen: up to the shoulder the same, from there bent so that white is where the
 * body records no more. The bend begins with the line's own slope, and is a part of a hyperbola.
 */
function toned(light: number, clipAt: number): number {
  const from = Math.min(SHOULDER, clipAt / 2);
  if (light <= from) return light;
  const slope = (clipAt - from) / (1 - from);
  const along = Math.min(1, (light - from) / (clipAt - from));
  return from + ((1 - from) * slope * along) / (1 + (slope - 1) * along);
}

/** Tones by the square root of the light, so that the dark ones lie as close as the bright ones. */
const curveTo = (clipAt: number): Uint8ClampedArray =>
  Uint8ClampedArray.from({ length: STEPS + 1 }, (_, i) =>
    Math.round(255 * screenPart(toned((i / STEPS) ** 2 * clipAt, clipAt))),
  );

/** Stripes over the lens's reflection: one of so many pixels along a diagonal, as a share of the width. */
const STRIPES = 48;
/** Tone of a stripe, and how much of it covers what is below. */
const STRIPE = 120;
const STRIPE_COVERS = 0.55;
/** Linear light of a line on the subject, or along its edge. */
const MARK_LIGHT = 0.06;

/** Red, green and blue, 8 bits each, by sRGB's curve; what the body can't record is white. */
function developed({ width, height, light, lens, mark }: FramePicture, clipAt: number): Uint8Array {
  const curve = curveTo(clipAt);
  const pixels = new Uint8Array(width * height * 3);
  const every = Math.max(4, Math.round(width / STRIPES));
  for (let index = 0; index < width * height; index += 1) {
    const [column, row] = [index % width, Math.floor(index / width)];
    const isStripe = (column + row) % every < every / 4;
    const covered = isStripe ? lens[index]! * STRIPE_COVERS : 0;
    const lined = mark[index]!;
    for (let c = 0; c < 3; c += 1) {
      const bare = Math.max(0, Math.min(clipAt, light[index * 3 + c]!));
      const tone =
        curve[Math.round(Math.sqrt((bare * (1 - lined) + MARK_LIGHT * lined) / clipAt) * STEPS)]!;
      pixels[index * 3 + c] = Math.round(tone * (1 - covered) + STRIPE * covered);
    }
  }
  return pixels;
}

/**
 * The picture as PNG, with its caption in the file.
 * Source of the format: W3C, Portable Network Graphics, third edition; written by fast-png.
 */
export function pngOf(
  picture: FramePicture,
  clipAt: number,
  caption: readonly string[],
): Uint8Array {
  return encode({
    width: picture.width,
    height: picture.height,
    data: developed(picture, clipAt),
    channels: 3,
    depth: 8,
    text: { Software: 'Lamella', Description: latin(caption.join(' ')) },
  });
}

/** A PNG's plain text is Latin-1. */
const latin = (text: string): string => text.replace(/[^\u0020-\u007e\u00a1-\u00ff]/g, '?');
