/** What the sample description of an MP4 or QuickTime file says of the picture. */
import type { ClipPicture } from '../../../shared/clips/facts.ts';
import { rational } from '../../../shared/quantity/rational.ts';
import { codeAt } from '../bytes.ts';
import { boxesOf } from '../iso-boxes.ts';
import type { IsoTrack } from '../iso-track.ts';
import { coloursOf } from './h264.ts';

/** Version and count, then the first entry: a visual one has 86 bytes before its own boxes. */
const FIRST_BOX = 8 + 86;

/**
 * `colr` by ISO/IEC 14496-12, 12.1.5, `pasp` by 12.1.4; `fiel` by "QuickTime File Format
 * Specification", Video Sample Description Extensions.
 */
export function isoPicture({ description }: IsoTrack): ClipPicture {
  if (!description) return {};
  const said: { -readonly [Key in keyof ClipPicture]: ClipPicture[Key] } = {};
  for (const { type, start, end } of boxesOf(description, FIRST_BOX)) {
    const length = end - start;
    if (type === 'pasp' && length >= 8) {
      const [width, height] = [description.getUint32(start), description.getUint32(start + 4)];
      if (width > 0 && height > 0) said.pixelAspect = rational(width, height);
    }
    if (type === 'fiel' && length >= 1) said.isInterlaced = description.getUint8(start) === 2;
    const kind = type === 'colr' && length >= 10 ? codeAt(description, start) : '';
    if (kind === 'nclx' || kind === 'nclc')
      Object.assign(
        said,
        coloursOf(description.getUint16(start + 4), description.getUint16(start + 6)),
      );
  }
  return said;
}
