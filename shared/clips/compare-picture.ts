/** How the pictures of a clip are stored, against what its recording mode says. */
import type { Rational } from '../quantity/rational.ts';
import type { ClipAsk, ClipChroma, ClipPicture } from './facts.ts';

export type PictureDifference =
  | { readonly of: 'interlaced'; readonly lost: boolean }
  | { readonly of: 'pixel-aspect'; readonly found: Rational; readonly lost: boolean }
  | {
      readonly of: 'bit-depth';
      readonly asked: number;
      readonly found: number;
      readonly lost: boolean;
    }
  | {
      readonly of: 'chroma' | 'transfer' | 'primaries';
      readonly asked: string;
      readonly found: string;
      readonly lost: boolean;
    };

/** From the least of colour to all of it. */
const BY_COLOUR: readonly ClipChroma[] = ['4:0:0', '4:1:1', '4:2:0', '4:2:2', '4:4:4'];

/**
 * Every mode of a plan has whole frames of square pixels. What the file doesn't say differs from
 * nothing.
 */
export function pictureDifferences(
  asked: ClipAsk['picture'] & {},
  found: ClipPicture,
): readonly PictureDifference[] {
  const differing: PictureDifference[] = [];
  if (found.isInterlaced) differing.push({ of: 'interlaced', lost: false });
  const { pixelAspect } = found;
  if (pixelAspect && pixelAspect.n !== pixelAspect.d)
    differing.push({ of: 'pixel-aspect', found: pixelAspect, lost: false });
  if (asked.bitDepth && found.bitDepth && asked.bitDepth !== found.bitDepth) {
    const lost = found.bitDepth < asked.bitDepth;
    differing.push({ of: 'bit-depth', asked: asked.bitDepth, found: found.bitDepth, lost });
  }
  if (asked.chroma && found.chroma && asked.chroma !== found.chroma) {
    const lost = BY_COLOUR.indexOf(found.chroma) < BY_COLOUR.indexOf(asked.chroma);
    differing.push({ of: 'chroma', asked: asked.chroma, found: found.chroma, lost });
  }
  for (const of of ['transfer', 'primaries'] as const) {
    const [one, other] = [asked[of], found[of]];
    if (one && other && one !== other)
      differing.push({ of, asked: one, found: other, lost: false });
  }
  return differing;
}
