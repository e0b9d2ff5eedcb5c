/** Small pictures of clips for a page, beside their names. */
import { encode } from 'fast-png';
import { paragraph } from '../../shared/api/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { SMALL } from '../looking/ffmpeg-arguments.ts';

/** @param thumbnails planes of brightness and the two differences, by the clip's path */
export const thumbnailLines = (thumbnails: ReadonlyMap<string, Uint8Array>): readonly string[] =>
  [...thumbnails].flatMap(([file, planes]) =>
    planes.length < 3 * SMALL.width * SMALL.height
      ? []
      : [
          // The file's own name is text of the plan, and escaped as all of it is.
          `${markdownText([paragraph(file)]).trim()}\n\n![](data:image/png;base64,${pngBase64(planes)})`,
        ],
  );

/** By the coefficients of ITU-R BT.709, 3. */
function pngBase64(planes: Uint8Array): string {
  const { width, height } = SMALL;
  const size = width * height;
  const data = new Uint8ClampedArray(3 * size);
  for (let at = 0; at < size; at++) {
    const luma = (255 / 219) * (planes[at]! - 16);
    const blue = (255 / 224) * (planes[size + at]! - 128);
    const red = (255 / 224) * (planes[2 * size + at]! - 128);
    data[3 * at] = luma + 1.5748 * red;
    data[3 * at + 1] = luma - 0.1873 * blue - 0.4681 * red;
    data[3 * at + 2] = luma + 1.8556 * blue;
  }
  return Buffer.from(encode({ width, height, channels: 3, data })).toString('base64');
}
