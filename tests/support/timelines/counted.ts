/**
 * Clips that count their own frames in the picture, and rough cuts of them rendered by FFmpeg from
 * what a timeline says: FFmpeg finds the frame for each moment, and the picture says which one it was.
 */
import { execFileSync } from 'node:child_process';
import type { Segment } from './shown.ts';

/** Frames a second. */
export type Rate = readonly [n: number, d: number];

/** Blocks of a picture, black for 0 and white for 1: the frame's number in binary. */
const [BITS, BLOCK, HEIGHT] = [10, 8, 16];
const WIDTH = BITS * BLOCK;
const PICTURE = WIDTH * HEIGHT;

const ffmpeg = (args: readonly string[], input?: Uint8Array): Buffer =>
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...args], {
    ...(input && { input }),
    maxBuffer: 2 ** 28,
  });

/** @param count of frames, up to 1024 */
export function makeCounted(file: string, [n, d]: Rate, count: number): void {
  if (count > 2 ** BITS) throw new Error(`${count} frames are more than a picture can count`);
  const pictures = new Uint8Array(count * PICTURE);
  for (let at = 0; at < pictures.length; at++) {
    const bit = Math.floor((at % WIDTH) / BLOCK);
    pictures[at] = (Math.floor(at / PICTURE) >> bit) & 1 ? 235 : 16;
  }
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'gray', '-s', `${WIDTH}x${HEIGHT}`];
  ffmpeg([...raw, '-r', `${n}/${d}`, '-i', '-', '-c:v', 'mpeg4', '-q:v', '2', file], pictures);
}

/**
 * The numbers in the pictures, in the order of the segments. A moment shows the last frame that has
 * begun (`round=up` of the fps filter); ten nanoseconds keep a rounded time from being late.
 *
 * @param counted for the name of each clip, its file and rate
 */
export function rendered(
  segments: readonly Segment[],
  rate: Rate,
  counted: (clip: string) => { readonly file: string; readonly rate: Rate },
): readonly number[] {
  // Each clip is decoded once, and shared among its segments.
  const clips = [...new Set(segments.map(({ clip }) => clip))];
  const inputs = clips.flatMap((clip) => ['-i', counted(clip).file]);
  const shares = clips.map((clip, input) => {
    const outputs = segments.flatMap((each, index) => (each.clip === clip ? [`[s${index}]`] : []));
    return `[${input}:v]split=${outputs.length}${outputs.join('')}`;
  });
  const fps = rate[0] / rate[1];
  const filters = segments.map(({ clip, place, perFrame, frames }, index) => {
    const [n, d] = counted(clip).rate;
    const [from, speed] = [(place * d) / n, (perFrame * fps * d) / n];
    const time = `(((PTS-STARTPTS)*TB-${from.toFixed(12)})/${speed.toFixed(12)}/TB)-10`;
    return [
      `[s${index}]settb=1/1000000000,setpts=${time}`,
      `fps=fps=${rate[0]}/${rate[1]}:round=up:start_time=0`,
      `trim=end_frame=${frames},setpts=N[v${index}]`,
    ].join(',');
  });
  const joined = `${segments.map((_, index) => `[v${index}]`).join('')}concat=n=${segments.length}[out]`;
  const graph = ['-filter_complex', [...shares, ...filters, joined].join(';'), '-map', '[out]'];
  const raw = ['-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'gray', '-'];
  const pictures = ffmpeg([...inputs, ...graph, ...raw]);
  return Array.from({ length: pictures.length / PICTURE }, (_, frame) => {
    let number = 0;
    for (let bit = 0; bit < BITS; bit++) {
      const middle = frame * PICTURE + (HEIGHT / 2) * WIDTH + bit * BLOCK + BLOCK / 2;
      if (pictures[middle]! > 128) number += 2 ** bit;
    }
    return number;
  });
}
