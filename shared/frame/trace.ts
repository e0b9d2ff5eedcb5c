/** Traces a frame: a few rays from every pixel through the pupil, more where they disagree. */
import type { Vec } from '../mirror/vector.ts';
import { seeBall } from './ball.ts';
import { axesOf, seeFlat } from './flat.ts';
import { scatteredOver } from './matt.ts';
import { newSample, sampleAt } from './samples.ts';
import type { Scene } from './scene.ts';
import { nothingSeen, type Seen } from './seen.ts';

export interface FrameSize {
  readonly width: number;
  readonly height: number;
}

/** A traced frame, row by row from the top left. */
export interface FramePicture extends FrameSize {
  /** Red, green and blue, linear, in sRGB's primaries; white is 1, and nothing is cut off above. */
  readonly light: Float32Array;
  /** Share of each pixel that shows the lens's front in the subject, 0 to 1. */
  readonly lens: Float32Array;
  /** Share that shows a light's face in the subject; a bubble's two walls count up to 2. */
  readonly lit: Float32Array;
  /** Share that a light in the way hides. */
  readonly hidden: Float32Array;
  /** Share that a line on a matt subject or a subject's edge takes: drawn over, they are not light. */
  readonly mark: Float32Array;
}

/** Rays of every pixel, and those that are added where the first disagree or differ from beside. */
const FIRST = 8;
const MORE = 24;

/** Shares that lie closer to 0 or 1 than this are whole. */
const WHOLE = 1e-6;

/** An Airy disk under this part of a pixel spreads nothing. */
const SPREADS = 0.3;

export function traceFrame(scene: Scene, { width, height }: FrameSize): FramePicture {
  const count = width * height;
  const picture: FramePicture = {
    width,
    height,
    light: new Float32Array(count * 3),
    lens: new Float32Array(count),
    lit: new Float32Array(count),
    hidden: new Float32Array(count),
    mark: new Float32Array(count),
  };
  const beside = new Float32Array(count);
  const ray = rays(scene, { width, height });
  const seen = nothingSeen();
  const take = (index: number, from: number, to: number): void => {
    const [column, row] = [index % width, Math.floor(index / width)];
    Object.assign(seen, NOTHING);
    for (let i = from; i < to; i += 1) ray(column, row, i, seen);
    const kept = from / to;
    const fresh = 1 / to;
    const { light, lens, lit, hidden, mark } = picture;
    light[index * 3] = light[index * 3]! * kept + seen.red * fresh;
    light[index * 3 + 1] = light[index * 3 + 1]! * kept + seen.green * fresh;
    light[index * 3 + 2] = light[index * 3 + 2]! * kept + seen.blue * fresh;
    lens[index] = lens[index]! * kept + seen.lens * fresh;
    lit[index] = lit[index]! * kept + seen.lit * fresh;
    hidden[index] = hidden[index]! * kept + seen.hidden * fresh;
    mark[index] = mark[index]! * kept + seen.mark * fresh;
    beside[index] = beside[index]! * kept + seen.beside * fresh;
  };
  for (let index = 0; index < count; index += 1) take(index, 0, FIRST);
  const { lens, lit, hidden, mark } = picture;
  const uneven = unevenPixels([lens, lit, hidden, mark, beside], width, height);
  for (let index = 0; index < count; index += 1)
    if (uneven[index]) take(index, FIRST, FIRST + MORE);
  return picture;
}

const NOTHING = nothingSeen();

/** Pixels whose rays see different things, or other things than those of the pixel right or below. */
function unevenPixels(shares: readonly Float32Array[], width: number, height: number): Uint8Array {
  const uneven = new Uint8Array(width * height);
  for (const share of shares)
    for (let row = 0; row < height; row += 1)
      for (let column = 0; column < width; column += 1) {
        const index = row * width + column;
        const here = share[index]!;
        if (here > WHOLE && Math.abs(here - Math.round(here)) > WHOLE) uneven[index] = 1;
        if (column + 1 < width && Math.abs(share[index + 1]! - here) > WHOLE)
          uneven[index] = uneven[index + 1] = 1;
        if (row + 1 < height && Math.abs(share[index + width]! - here) > WHOLE)
          uneven[index] = uneven[index + width] = 1;
      }
  return uneven;
}

/** What a numbered ray of a pixel sees, added to `seen`. */
function rays(
  scene: Scene,
  { width, height }: FrameSize,
): (column: number, row: number, index: number, seen: Seen) => void {
  const { camera, body } = scene;
  const scattered = scatteredOver(camera, body, scene.lit);
  const axes = body.shape === 'flat' ? axesOf(body) : undefined;
  const spreads = camera.airyMm > (SPREADS * camera.widthMm) / width;
  const sample = newSample();
  return (column, row, index, seen) => {
    sampleAt(column, row, index, spreads, sample);
    const across = ((column + sample.x) / width) * 2 - 1;
    const up = 1 - ((row + sample.y) / height) * 2;
    const frameAt: Vec = [
      (across * camera.widthMm + sample.airyX * camera.airyMm) / 2,
      (up * camera.heightMm + sample.airyY * camera.airyMm) / 2,
      camera.focusAtMm,
    ];
    const pupil: Vec = [
      (sample.pupilX * camera.pupilMm) / 2,
      (sample.pupilY * camera.pupilMm) / 2,
      camera.pupilAtMm,
    ];
    if (body.shape === 'flat')
      seeFlat(scene, body, axes!, pupil, frameAt, scattered.at(across, up), seen);
    else seeBall(scene, body.radiusMm, pupil, frameAt, seen);
  };
}
