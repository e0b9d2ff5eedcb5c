/** Traces a frame: a few rays from every pixel through the pupil, more where they disagree. */
import type { Vec } from '../mirror/vector.ts';
import { seeBall } from './ball.ts';
import { axesOf, seeFlat } from './flat.ts';
import { scatteredOver } from './matt.ts';
import { sampleAt, samples } from './samples.ts';
import type { Scene } from './scene.ts';
import { nothingSeen, SEES, type Seen } from './seen.ts';

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
  /** Share that shows what is beside the subject. */
  readonly beside: Float32Array;
}

/** Rays of every pixel, and those that are added where the first disagree or differ from beside. */
const FIRST = 5;
const MORE = 27;

/** So many pixels with more rays take about as long as a row. */
const AT_A_TIME = 50;

/** Shares that lie closer to 0 or 1 than this are whole. */
const WHOLE = 1e-6;

/** An Airy disk under this part of a pixel spreads nothing. */
const SPREADS = 0.3;

export function traceFrame(scene: Scene, size: FrameSize): FramePicture {
  const work = tracing(scene, size);
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}

/** The same a little at a time: a row, or as many of the pixels that need more rays. */
export function* tracing(
  scene: Scene,
  { width, height }: FrameSize,
): Generator<undefined, FramePicture> {
  const count = width * height;
  const picture: FramePicture = {
    width,
    height,
    light: new Float32Array(count * 3),
    lens: new Float32Array(count),
    lit: new Float32Array(count),
    hidden: new Float32Array(count),
    mark: new Float32Array(count),
    beside: new Float32Array(count),
  };
  const rays = raysOf(scene, { width, height });
  const seen = nothingSeen();
  const { lens, lit, hidden, mark, beside, light } = picture;
  const shares = [lens, lit, hidden, mark, beside];
  const take = (index: number, from: number, to: number): void => {
    const ray = rays(index % width, Math.floor(index / width));
    seen.fill(0);
    for (let i = from; i < to; i += 1) ray(i, seen);
    const kept = from / to;
    for (let c = 0; c < 3; c += 1)
      light[index * 3 + c] = light[index * 3 + c]! * kept + seen[c]! / to;
    shares.forEach((share, i) => {
      share[index] = share[index]! * kept + seen[SEES.lens + i]! / to;
    });
  };
  for (let index = 0; index < count; index += 1) {
    take(index, 0, FIRST);
    if (index % width === 0) yield;
  }
  // Lines are drawn over: the first rays do for them.
  yield* refined([lens, lit, hidden, beside], { width, height }, (index) =>
    take(index, FIRST, FIRST + MORE),
  );
  return picture;
}

const isMixed = (share: number): boolean => Math.abs(share - Math.round(share)) > WHOLE;

/**
 * Takes more rays of the pixels whose rays see different things, or other things than those of the
 * pixel right or below; and from there on of all around them, as far as the edge is soft.
 */
function* refined(
  shares: readonly Float32Array[],
  { width, height }: FrameSize,
  take: (index: number) => void,
): Generator<undefined> {
  const isQueued = new Uint8Array(width * height);
  const queue: number[] = [];
  const add = (index: number): void => {
    if (isQueued[index]) return;
    isQueued[index] = 1;
    queue.push(index);
  };
  const differs = (a: number, b: number): boolean =>
    shares.some((share) => Math.abs(share[a]! - share[b]!) > WHOLE);
  for (let index = 0; index < width * height; index += 1) {
    if (shares.some((share) => isMixed(share[index]!))) add(index);
    for (const next of [
      ...((index + 1) % width === 0 ? [] : [index + 1]),
      ...(index + width < width * height ? [index + width] : []),
    ])
      if (differs(index, next)) {
        add(index);
        add(next);
      }
  }
  let taken = 0;
  for (let index = queue.pop(); index !== undefined; index = queue.pop()) {
    take(index);
    taken += 1;
    if (taken % AT_A_TIME === 0) yield;
    if (!shares.some((share) => isMixed(share[index!]!))) continue;
    if (index % width > 0) add(index - 1);
    if ((index + 1) % width > 0) add(index + 1);
    if (index >= width) add(index - width);
    if (index + width < width * height) add(index + width);
  }
}

/** Of each pixel: what a numbered ray of it sees, added to `seen`. */
function raysOf(
  scene: Scene,
  { width, height }: FrameSize,
): (column: number, row: number) => (index: number, seen: Seen) => void {
  const { camera, body } = scene;
  const scattered = scatteredOver(camera, body, scene.lit);
  const axes = body.shape === 'flat' ? axesOf(body) : undefined;
  const spreads = camera.airyMm > (SPREADS * camera.widthMm) / width;
  const table = samples();
  let [column, row] = [0, 0];
  const ray = (index: number, seen: Seen): void => {
    const at = sampleAt(index);
    const across = ((column + table[at]!) / width) * 2 - 1;
    const up = 1 - ((row + table[at + 1]!) / height) * 2;
    const spread = spreads ? camera.airyMm : 0;
    const frameAt: Vec = [
      (across * camera.widthMm + table[at + 4]! * spread) / 2,
      (up * camera.heightMm + table[at + 5]! * spread) / 2,
      camera.focusAtMm,
    ];
    const pupil: Vec = [
      (table[at + 2]! * camera.pupilMm) / 2,
      (table[at + 3]! * camera.pupilMm) / 2,
      camera.pupilAtMm,
    ];
    if (body.shape === 'flat')
      seeFlat(scene, body, axes!, pupil, frameAt, scattered.at(across, up), seen);
    else seeBall(scene, body.radiusMm, pupil, frameAt, seen);
  };
  return (atColumn, atRow) => {
    [column, row] = [atColumn, atRow];
    return ray;
  };
}
