/** What reading and looking at clips costs, by their size and length. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { findFfmpeg } from '../../server/looking/find-ffmpeg.ts';
import { lookAtClip } from '../../server/looking/look-at-clip.ts';
import { readClip } from '../../server/media/read-clip.ts';
import { makeClip } from '../support/ffmpeg.ts';
import { makeTake } from '../support/takes.ts';
import { type Spread, spread } from './statistics.ts';

const TIMES = 9;

async function inFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(path.join(tmpdir(), 'lamella-bench-'));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Milliseconds to read what the headers of a clip of so many seconds and 10 GB say. */
export const benchHeaders = (
  seconds: readonly number[],
): Promise<readonly (readonly [number, Spread])[]> =>
  inFolder(async (folder) => {
    const rows: (readonly [number, Spread])[] = [];
    for (const long of seconds) {
      const file = path.join(folder, `${long}.mp4`);
      makeTake(file, { size: '64x48', rate: '50', seconds: long, megabitsPerS: 80_000 / long });
      const times: number[] = [];
      for (let time = 0; time < TIMES; time++) {
        const start = performance.now();
        await readClip(file);
        times.push(performance.now() - start);
      }
      rows.push([long, spread(times)]);
    }
    return rows;
  });

interface Looked {
  readonly size: string;
  readonly frames: number;
  /** Seconds of processor for 200 frames: of ffmpeg that only decodes, and of our own process. */
  readonly decoding: number;
  readonly own: number;
  /** Seconds from start to end. */
  readonly wall: number;
  readonly heapMb: number;
}

/** Sizes are those of modes, frames those of takes of ten seconds to minutes. */
export const benchLooks = (
  clips: readonly (readonly [size: string, seconds: number])[],
): Promise<readonly Looked[]> =>
  inFolder(async (folder) => {
    const program = await findFfmpeg(process.env);
    if (program === null) return [];
    const rows: Looked[] = [];
    for (const [size, seconds] of clips) {
      const file = path.join(folder, `${size}-${seconds}.mp4`);
      const coding = ['-c:v', 'libx264', '-preset', 'veryfast', '-pix_fmt', 'yuv420p'];
      makeClip(file, { size, seconds, coding });
      const [width = 0, height = 0] = size.split('x').map(Number);
      const decoding = decodingS(file);
      const before = process.cpuUsage();
      const start = performance.now();
      let most = 0;
      const answer = await lookAtClip({
        ...{ program, file, size: { width, height }, signal: new AbortController().signal },
        ask: {
          ...{ lampsHz: [110], exposedFps: 25, effectiveFNumber: 8, pixelUm: 9 },
          ...{ exposureErrorStops: 0, iso: 400, body: 'body-a' },
        },
        progress: () => {
          most = Math.max(most, process.memoryUsage().heapUsed + process.memoryUsage().external);
        },
      });
      if (answer.state !== 'seen') throw new Error(JSON.stringify(answer));
      const { frames } = answer.looked;
      const { user, system } = process.cpuUsage(before);
      const wall = (performance.now() - start) / 1000;
      const per200 = 200 / frames;
      rows.push({
        ...{ size, frames, wall, decoding: decoding * per200 },
        own: ((user + system) / 1e6) * per200,
        heapMb: most / 1e6,
      });
    }
    return rows;
  });

/** Seconds of processor that ffmpeg says it used. */
function decodingS(file: string): number {
  const args = ['-hide_banner', '-nostdin', '-benchmark', '-i', file, '-f', 'null', '-'];
  const { stderr } = spawnSync('ffmpeg', args, { encoding: 'utf8' });
  return Number(/bench: utime=([0-9.]+)s/.exec(stderr)?.[1] ?? Number.NaN);
}
