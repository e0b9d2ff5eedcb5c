/**
 * Clips made by ffmpeg, read by Lamella and by ffprobe (https://ffmpeg.org/ffprobe.html), which
 * nobody here wrote: equal, or the difference is explained beside it.
 */
import { createHash } from 'node:crypto';
import { readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { codecFamily } from '../../shared/clips/codec.ts';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { eachAwaited } from '../support/each.ts';
import { type ClipRecipe, clipFolder, copyClip, makeClip, probe } from '../support/ffmpeg.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);

const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];
const HEVC = [
  ...['-c:v', 'libx265', '-preset', 'ultrafast', '-tag:v', 'hvc1'],
  ...['-x265-params', 'log-level=error'],
];
const PRORES = ['-c:v', 'prores_ks'];
const MJPEG = ['-c:v', 'mjpeg', '-pix_fmt', 'yuvj420p'];

const CLIPS: Readonly<Record<string, ClipRecipe>> = {
  'plain.mp4': { coding: H264 },
  'slowed.mp4': { rate: '30000/1001', coding: H264 },
  'film.mov': { rate: '24000/1001', coding: H264 },
  'slowed.mkv': { rate: '30000/1001', seconds: 2, coding: H264 },
  'fast.mkv': { rate: '60000/1001', seconds: 2, coding: H264 },
  'slowed.avi': { rate: '30000/1001', coding: H264 },
  'slowed.ts': { rate: '30000/1001', coding: H264 },
  'blu.m2ts': { rate: '50', coding: H264 },
  'camera.mts': { rate: '25', coding: H264 },
  'reordered.mp4': { rate: '50', coding: ['-c:v', 'libx264', '-bf', '3', '-pix_fmt', 'yuv420p'] },
  'reordered.ts': { rate: '50', coding: ['-c:v', 'libx264', '-bf', '3', '-pix_fmt', 'yuv420p'] },
  // 1080 is no multiple of 16, the coder's block: the stored picture is higher than what is shown.
  'full.mp4': { size: '1920x1080', rate: '50', coding: H264 },
  'full.mkv': { size: '1920x1080', rate: '50', coding: H264 },
  'full.ts': { size: '1920x1080', rate: '50', coding: H264 },
  'small.mp4': { size: '1280x720', coding: H264 },
  'odd.mov': { size: '642x362', rate: '12.5', coding: H264 },
  'high.mp4': { size: '1280x720', rate: '120', coding: H264 },
  'hevc.mp4': { coding: HEVC },
  'hevc.mkv': { coding: HEVC },
  'hevc.ts': { coding: ['-c:v', 'libx265', '-x265-params', 'log-level=error'] },
  'prores.mov': { rate: '24000/1001', coding: PRORES },
  'mjpeg.mov': { coding: MJPEG },
  'mjpeg.avi': { coding: MJPEG },
  'mjpeg.mkv': { coding: MJPEG },
  'vp9.webm': { coding: ['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8'] },
  'dnx.mov': {
    size: '1280x720',
    coding: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_lb', '-pix_fmt', 'yuv422p'],
  },
};

/** Where ffprobe says otherwise, and why. */
const EXPLAINED = {
  // Matroska keeps times in milliseconds, and ffprobe makes 59.94 of them only nearly.
  rate: new Map([['fast.mkv', '19001/317']]),
  // A transport stream doesn't say how long its last frame stays: ffprobe leaves that frame out.
  framesShort: new Map([['hevc.ts', 1]]),
};

async function factsOf(name: string): Promise<ClipFacts> {
  const reading = await readClip(at(name));
  if (reading.state !== 'read') throw new Error(`${name}: ${JSON.stringify(reading)}`);
  return reading.facts;
}

const whyNot = async (name: string): Promise<string> => {
  const reading = await readClip(at(name));
  return reading.state === 'unreadable' ? reading.why : reading.state;
};

const fraction = ({ rate }: ClipFacts): string =>
  rate?.kind === 'constant' ? `${rate.rate.n}/${rate.rate.d}` : JSON.stringify(rate);

describe('a clip of constant rate is to us what it is to ffprobe', () => {
  it('size, rate, coding, length, rotation, bytes', () => {
    return eachAwaited(Object.entries(CLIPS), async ([name, recipe]) => {
      makeClip(at(name), recipe);
      const facts = await factsOf(name);
      const theirs = probe(at(name));
      expect(facts.size).toEqual({ width: theirs.width, height: theirs.height });
      const made = recipe.rate ?? '25';
      expect(fraction(facts)).toBe(
        made === '12.5' ? '25/2' : made.includes('/') ? made : `${made}/1`,
      );
      expect(theirs.rate).toBe(EXPLAINED.rate.get(name) ?? fraction(facts));
      expect(facts.codec).toBe(codecFamily(theirs.codec));
      expect(facts.rotation).toBe(theirs.rotation);
      expect(facts.bytes).toBe(theirs.bytes);
      // ffprobe rounds lengths to its own ticks; half a frame is nearer than anybody cuts.
      const [n = 1, d = 1] = fraction(facts).split('/').map(Number);
      const frames = ((facts.durationS - theirs.durationS) * n) / d;
      expect(Math.abs(frames - (EXPLAINED.framesShort.get(name) ?? 0))).toBeLessThan(0.5);
      expect(facts.durationS).toBeCloseTo(recipe.seconds ?? 1, 1);
      expect(facts.bitsPerS).toBeCloseTo((theirs.bytes * 8) / facts.durationS, 6);
    });
  });
});

describe('a clip of variable rate', () => {
  beforeAll(() => {
    makeClip(at('even.mp4'), { rate: '50', seconds: 2, coding: H264 });
    const some = ['-vf', "select='not(mod(n,3))+not(mod(n,7))'", '-vsync', 'vfr'];
    for (const name of ['uneven.mp4', 'uneven.mkv'])
      makeClip(at(name), { rate: '50', seconds: 2, coding: [...some, ...H264] });
  });

  it.each(['uneven.mp4', 'uneven.mkv'])('%s is seen to be one', async (name) => {
    const { rate } = await factsOf(name);
    expect(rate?.kind).toBe('variable');
    if (rate?.kind !== 'variable') return;
    // Of frames 0 3 6 7 9 12 14 … of 50 a second: neighbours are one to three frames apart.
    expect(rate.highest).toBeCloseTo(50, 1);
    expect(rate.lowest).toBeCloseTo(50 / 3, 1);
  });

  it('has the average that ffprobe has, but for the last frame’s length', async () => {
    // Of the MP4 alone: in Matroska ffprobe takes the rate that the header was written with.
    const { rate } = await factsOf('uneven.mp4');
    const [n = 1, d = 1] = probe(at('uneven.mp4')).averageRate.split('/').map(Number);
    expect(rate?.kind === 'variable' && Math.abs(rate.mean / (n / d) - 1)).toBeLessThan(0.05);
  });

  it('is not what frames are that only come in another order', async () => {
    expect((await factsOf('reordered.mp4')).rate?.kind).toBe('constant');
  });
});

describe('what a file carries', () => {
  const SET = [
    ...['-metadata', 'iso=800', '-metadata', 'ExposureTime=1/50'],
    ...['-metadata', 'WhiteBalance=5600K', '-metadata', 'creation_time=2027-03-02T10:20:30Z'],
  ];

  beforeAll(() => {
    makeClip(at('bare.mp4'), { coding: H264 });
    copyClip(at('bare.mp4'), at('told.mov'), '-movflags', 'use_metadata_tags', ...SET);
    copyClip(at('bare.mp4'), at('told.mkv'), ...SET);
    copyClip(at('bare.mp4'), at('dated.mp4'), '-metadata', 'creation_time=2027-03-02T10:20:30Z');
    copyClip(at('bare.mp4'), at('turned.mp4'), '-metadata:s:v', 'rotate=90');
    copyClip(at('bare.mp4'), at('over.mov'), '-metadata:s:v', 'rotate=180');
  });

  it.each(['told.mov', 'told.mkv'])('%s: shutter, ISO, white balance', async (name) => {
    expect(await factsOf(name)).toMatchObject({ shutterS: 1 / 50, iso: 800, whiteBalance: 5600 });
  });

  it('when it was made', async () => {
    expect((await factsOf('dated.mp4')).created).toBe('2027-03-02T10:20:30Z');
    expect((await factsOf('told.mov')).created).toBe('2027-03-02T10:20:30Z');
    // Matroska has a date of its own, which isn't read.
    expect((await factsOf('told.mkv')).created).toBeNull();
  });

  it('nothing of it, where it is not there', async () => {
    expect(await factsOf('bare.mp4')).toMatchObject({
      shutterS: null,
      iso: null,
      whiteBalance: null,
      created: null,
    });
  });

  it.each(['turned.mp4', 'over.mov'])('%s: how it is turned for display', async (name) => {
    const { rotation } = await factsOf(name);
    expect(rotation).toBe(probe(at(name)).rotation);
    expect(rotation).not.toBe(0);
  });
});

describe('what can’t be read is said, and why', () => {
  const half = (from: string, to: string): void => {
    const whole = readFileSync(at(from));
    writeFileSync(at(to), whole.subarray(0, Math.floor(whole.length / 2)));
  };

  beforeAll(() => {
    makeClip(at('whole.mp4'), { coding: H264 });
    copyClip(at('whole.mp4'), at('ahead.mp4'), '-movflags', '+faststart');
    for (const name of ['whole.mkv', 'whole.avi', 'whole.ts']) copyClip(at('whole.mp4'), at(name));
    half('whole.mp4', 'half.mp4');
    half('ahead.mp4', 'half-ahead.mp4');
    half('whole.mkv', 'half.mkv');
    half('whole.avi', 'half.avi');
    half('whole.ts', 'half.ts');
    writeFileSync(at('empty.mov'), '');
    writeFileSync(at('words.mp4'), 'not a clip\n');
    writeFileSync(
      at('noise.mov'),
      Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 31) % 256)),
    );
    makeClip(at('tape.ts'), { coding: ['-c:v', 'mpeg2video'] });
  });

  it.each([
    ['half.mp4', 'it is cut off: the index of its frames, which comes last, is missing'],
    ['half-ahead.mp4', 'it is cut off: its end is missing'],
    ['half.mkv', 'it is cut off: its end is missing'],
    ['half.avi', 'it is cut off: its end is missing'],
    ['empty.mov', 'it is empty'],
    ['words.mp4', 'its contents are broken'],
    ['noise.mov', 'it is not a clip in a supported format'],
    // MPEG-2 in transport streams is no coding that the library knows.
    ['tape.ts', 'its encoding, mpeg2, is not supported in this container'],
    ['gone.mp4', 'not-found'],
  ])('%s: %s', async (name, why) => {
    expect(await whyNot(name)).toBe(why);
  });

  it('half a transport stream is a shorter one: it has no end to be missed', async () => {
    const [whole, cut] = [await factsOf('whole.ts'), await factsOf('half.ts')];
    expect(cut.durationS).toBeLessThan(whole.durationS);
    expect(cut.durationS).toBeGreaterThan(0);
  });
});

describe('nothing is written', () => {
  it('bytes and times are what they were', async () => {
    makeClip(at('kept.mov'), { coding: H264 });
    const long = new Date('2020-01-02T03:04:05Z');
    utimesSync(at('kept.mov'), long, long);
    const digest = (): string =>
      createHash('sha256')
        .update(readFileSync(at('kept.mov')))
        .digest('hex');
    const before = { digest: digest(), written: statSync(at('kept.mov')).mtimeMs };
    await factsOf('kept.mov');
    expect({ digest: digest(), written: statSync(at('kept.mov')).mtimeMs }).toEqual(before);
  });
});
