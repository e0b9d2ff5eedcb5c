/** Clips that ffmpeg made with each fault in a known amount, and clean ones: what is seen in them. */
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findFfmpeg } from '../../server/looking/find-ffmpeg.ts';
import { lookAtClip } from '../../server/looking/look-at-clip.ts';
import type { LookAsk, LookedAt } from '../../shared/looked-at/looked.ts';
import { clipFolder, run } from '../support/ffmpeg.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const SIZE = { width: 320, height: 180 };
const ASK: LookAsk = {
  lampsHz: [],
  exposedFps: 25,
  effectiveFNumber: null,
  pixelUm: null,
  exposureErrorStops: null,
};
const LOSSLESS = ['-c:v', 'libx264', '-preset', 'ultrafast', '-qp', '4', '-pix_fmt', 'yuv420p'];

let program = '';
beforeAll(async () => {
  program = (await findFfmpeg(process.env)) ?? '';
  expect(program).not.toBe('');
});

let made = 0;

/** @param source of ffmpeg's own filters */
async function seenOf(
  source: string,
  {
    ask = {},
    kind = 'mp4',
    sound = null,
    coding = LOSSLESS,
  }: {
    readonly ask?: Partial<LookAsk>;
    readonly kind?: string;
    readonly sound?: string | null;
    readonly coding?: readonly string[];
  } = {},
): Promise<LookedAt> {
  const file = path.join(folder, `${++made}.${kind}`);
  run('ffmpeg', [
    ...['-v', 'error', '-y', '-f', 'lavfi', '-i', source],
    ...(sound === null ? [] : ['-f', 'lavfi', '-i', sound, '-shortest']),
    ...[...coding, file],
  ]);
  const answer = await lookAtClip({
    program,
    file,
    size: SIZE,
    ask: { ...ASK, ...ask },
    signal: new AbortController().signal,
    progress: () => undefined,
  });
  if (answer.state !== 'seen') throw new Error(JSON.stringify(answer));
  return answer.looked;
}

const MOVING = 'testsrc2=size=320x180:rate=25:duration=3';
const GREY = 'color=c=gray:size=320x180:rate=25:duration=3';

describe('a clean clip', () => {
  it('shows nothing of it', async () => {
    const looked = await seenOf(`${MOVING},eq=contrast=0.8`, { ask: { lampsHz: [110] } });
    expect(looked.frames).toBe(75);
    expect(looked.clipped).toBe(0);
    expect(looked.crushed).toBe(0);
    expect(looked.repeats).toEqual([]);
    expect(looked.edgePx).toBeLessThan(1.6);
    expect(looked.sound).toBeNull();
    console.log(looked);
  });
});

describe('flicker', () => {
  it.each([0.02, 0.05, 0.2])('of depth %s', async (depth) => {
    // 110 Hz under 25 fps comes and goes 10 times a second; geq works on codes: 1 + d/γ·sin.
    const wave = `sin(2*PI*110*N/25+Y/20)`;
    const source = `${GREY},format=gray,geq=lum='16+219*(0.099*-1+1.099*pow(0.3*(1+${depth}*${wave}),0.45))'`;
    const { flicker } = await seenOf(source, { ask: { lampsHz: [110, 100] } });
    console.log(flicker);
    expect(flicker[0]?.depth).toBeCloseTo(depth, 2);
    expect(flicker[1]?.depth).toBeNull();
  });
});

describe('repeats', () => {
  it('of single frames and a freeze', async () => {
    const source = `${MOVING},select='not(eq(n,20)+between(n,40,54))',fps=25`;
    const { repeats, frames } = await seenOf(source);
    console.log(repeats, frames);
  });
});

describe('edges', () => {
  it.each([0, 1, 2, 4])('of a blur of %s px', async (sigma) => {
    const blur = sigma > 0 ? `,gblur=sigma=${sigma}:steps=3` : '';
    const { edgePx } = await seenOf(
      `color=c=black:size=320x180:rate=25:duration=1,drawgrid=w=64:h=60:t=24:c=white${blur}`,
    );
    console.log(sigma, edgePx, sigma * Math.sqrt(2 * Math.PI));
  });
});

describe('exposure', () => {
  it.each([0, 0.05, 0.3])('of %s of the picture clipped', async (share) => {
    const { clipped } = await seenOf(
      `${MOVING},eq=contrast=0.7,drawbox=x=0:y=0:w=320*${share}:h=180:c=white:t=fill`,
    );
    console.log(share, clipped);
  });
});

describe('sound', () => {
  it.each([
    ['sine=frequency=440,volume=0.5', 0],
    ['sine=frequency=440,volume=40', 0.5],
    ['anullsrc', 0],
  ])('%s', async (sound) => {
    const looked = await seenOf(MOVING, { sound });
    console.log(sound, looked.sound);
  });
});
