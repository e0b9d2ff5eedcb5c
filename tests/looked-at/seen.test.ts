/**
 * Clips that ffmpeg made with each fault in a known amount, and clean ones: what is seen in them.
 * The amounts are those that ffmpeg's own filters were told (https://ffmpeg.org/ffmpeg-filters.html).
 */
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { findFfmpeg } from '../../server/looking/find-ffmpeg.ts';
import { lookAtClip } from '../../server/looking/look-at-clip.ts';
import { sightsOf } from '../../shared/looked-at/judge.ts';
import type { LookAsk, LookedAt } from '../../shared/looked-at/looked.ts';
import { clipFolder, run } from '../support/ffmpeg.ts';
import { manyRuns } from '../support/runs.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const SIZE = { width: 320, height: 180 };
/** A lamp of 110 Hz shows 10 times a second at 25 fps, one of 100 Hz stands still. */
const ASK: LookAsk = {
  lampsHz: [110, 100],
  exposedFps: 25,
  effectiveFNumber: 8,
  pixelUm: 9,
  exposureErrorStops: 0,
  iso: 400,
  body: 'body-a',
};

const h264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-qp', '4', '-pix_fmt', 'yuv420p'];
const PCM = ['-c:a', 'pcm_s16le'];
/** By container: how its pictures and its sound are coded. */
const KINDS: Readonly<Record<string, readonly string[]>> = {
  mp4: h264,
  mov: [...h264, ...PCM],
  mkv: [...h264, ...PCM],
  ts: h264,
  avi: ['-c:v', 'mjpeg', '-q:v', '2', '-pix_fmt', 'yuvj420p', ...PCM],
  mxf: ['-c:v', 'mpeg2video', '-b:v', '30M', '-pix_fmt', 'yuv422p', '-ar', '48000', ...PCM],
  webm: ['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8', '-crf', '4', '-b:v', '0'],
};

const MOVING = 'testsrc2=size=320x180:rate=25:duration=3,eq=contrast=0.7';
const GRID =
  'color=c=0x303030:size=320x180:rate=25:duration=1,drawgrid=w=64:h=60:t=30:c=0xc0c0c0,noise=alls=2:allf=t';
const box = (share: number, colour: string): string =>
  `${MOVING},drawbox=x=0:y=0:w=${320 * share}:h=180:c=${colour}:t=fill`;
/** Light of 0.3 of white that comes and goes, later from line to line, by BT.709's transfer. */
const flickering = (depth: number): string =>
  `color=size=2x90:rate=25:duration=3,geq=lum='16+219*(1.099*pow(0.3*(1+${depth}*sin(2*PI*110*N/25+Y/9)),0.45)-0.099)':cb=128:cr=128,scale=320:180:flags=neighbor`;

interface Fault {
  readonly source: string;
  readonly sound?: string;
  /** What is told of it, in this order. */
  readonly told: readonly string[];
  readonly amount: (looked: LookedAt) => void;
}

const near = (value: number | null | undefined, wanted: number, within: number): void => {
  expect(value).toBeGreaterThan(wanted - within);
  expect(value).toBeLessThan(wanted + within);
};

const FAULTS: Readonly<Record<string, Fault>> = {
  'nothing wrong': {
    source: MOVING,
    told: [],
    amount: ({ clipped, crushed, repeats, frames }) =>
      expect({ clipped, crushed, repeats, frames }).toEqual({
        clipped: 0,
        crushed: 0,
        repeats: [],
        frames: 75,
      }),
  },
  'a twentieth clipped': {
    source: box(0.05, 'white'),
    told: ['exposure'],
    amount: ({ clipped }) => near(clipped, 0.05, 0.01),
  },
  'four fifths black': {
    source: box(0.8, 'black'),
    told: ['exposure'],
    amount: ({ crushed }) => near(crushed, 0.8, 0.02),
  },
  'flicker of 4%': {
    source: flickering(0.04),
    told: ['flicker'],
    amount: ({ flicker }) => {
      near(flicker[0]?.depth, 0.04, 0.004);
      expect(flicker[1]?.depth).toBeNull();
    },
  },
  'flicker of 20%': {
    source: flickering(0.2),
    told: ['flicker'],
    amount: ({ flicker }) => near(flicker[0]?.depth, 0.2, 0.02),
  },
  'a repeated frame and a freeze of 15': {
    source: `${MOVING},select='not(eq(n,20)+between(n,40,54))',fps=25`,
    told: ['repeats'],
    amount: ({ repeats }) =>
      expect(repeats).toEqual([
        { frame: 20, count: 1 },
        { frame: 40, count: 15 },
      ]),
  },
  // Averaging over 2r + 1 pixels makes a ramp of that width of a step.
  'edges of 11 px': {
    source: `${GRID},avgblur=sizeX=5:sizeY=5`,
    told: ['focus'],
    // A coder that loses detail leaves steps at the bounds of its blocks.
    amount: ({ edgePx }) => near(edgePx, 10, 3),
  },
  'edges of 3 px': {
    source: `${GRID},avgblur=sizeX=1:sizeY=1`,
    told: [],
    amount: ({ edgePx }) => near(edgePx, 3, 0.6),
  },
  'silent sound': {
    source: MOVING,
    sound: 'anullsrc=sample_rate=48000',
    told: ['sound'],
    amount: ({ sound }) => expect(sound?.clipped).toBe(0),
  },
  // A sine of 1/8 of full scale, 40 times louder, is at full scale where |sin| > 1/5.
  'clipped sound': {
    source: MOVING,
    sound: 'sine=frequency=440:sample_rate=48000,volume=40',
    told: ['sound'],
    amount: ({ sound }) => near(sound?.clipped, 1 - (2 / Math.PI) * Math.asin(1 / 5), 0.03),
  },
};

/** Coders of sound round what is clipped: its share is known of plain samples alone. */
const PLAIN_SOUND = new Set(['mov', 'mkv', 'avi', 'mxf']);

const isLong = manyRuns(1) > 1;
const CASES = Object.keys(FAULTS).flatMap((fault, index) =>
  Object.keys(KINDS)
    .filter((kind) => fault !== 'clipped sound' || PLAIN_SOUND.has(kind))
    // Each fault once, in one container after the other; the long run has all of both.
    .filter((_, place, kinds) => isLong || place === index % kinds.length)
    .map((kind) => [fault, kind] as const),
);

async function lookedAt(fault: string, kind: string): Promise<LookedAt> {
  const file = path.join(folder, `${fault.replaceAll(/\W/g, '-')}.${kind}`);
  const { source, sound } = FAULTS[fault]!;
  run('ffmpeg', [
    ...['-v', 'error', '-y', '-f', 'lavfi', '-i', source],
    ...(sound === undefined ? [] : ['-f', 'lavfi', '-i', sound, '-shortest']),
    ...[...KINDS[kind]!, file],
  ]);
  const program = await findFfmpeg(process.env);
  const { signal } = new AbortController();
  const progress = (): void => undefined;
  const answer = await lookAtClip({
    program: program!,
    file,
    size: SIZE,
    ask: ASK,
    signal,
    progress,
  });
  if (answer.state !== 'seen') throw new Error(JSON.stringify(answer));
  return answer.looked;
}

it.each(CASES)(
  '%s, in %s',
  async (fault, kind) => {
    const looked = await lookedAt(fault, kind);
    FAULTS[fault]!.amount(looked);
    expect(sightsOf(ASK, looked).map(({ of }) => of)).toEqual(FAULTS[fault]!.told);
  },
  30_000,
);

it('most containers and faults are tried', () => {
  expect(CASES.length).toBeGreaterThanOrEqual(isLong ? 60 : 10);
});
