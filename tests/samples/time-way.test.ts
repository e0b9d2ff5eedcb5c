/**
 * Time the whole way, in two samples: three hours of stills as one short clip beside two clips of the
 * other body, and a drop at 119.88 fps, which the body slows in one shot and the edit in the other.
 * The clips are made here, by a script and for the test's time. The rough cuts are rendered from small
 * ones of the same rates and lengths, which count their frames.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeTake } from '../support/takes.ts';
import { makeCounted, type Rate, rendered } from '../support/timelines/counted.ts';
import { readOtio } from '../support/timelines/otio.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LAMELLA = path.join(ROOT, 'dist/lamella.cjs');
const TRAY = 'alum-tray.shootplan.yaml';
const DROP = 'first-drop.shootplan.yaml';

/** As far as it is read here. */
interface Clip {
  readonly name: string;
  readonly source_range: { readonly duration: { readonly value: number } };
  readonly effects: readonly { readonly time_scalar: number }[];
}

const CLIPS = {
  [TRAY]: `
clips:
  seed-grows:
    - { file: media/seed.mp4, verdict: keep, note: put together from the stills }
  edge-dries:
    - { file: media/0002.mp4, verdict: keep }
  crust-breaks:
    - { file: media/0003.mp4, verdict: keep }
`,
  [DROP]: `
clips:
  drop-lets-go:
    - { file: media/0004.mp4, verdict: keep }
  crown-rises:
    - { file: media/0005.mp4, verdict: keep }
`,
};

/** Rate and number of frames of each clip. */
const COUNTED: Readonly<Record<string, readonly [rate: Rate, frames: number]>> = {
  '0002.mp4': [[50, 1], 1000],
  '0003.mp4': [[50, 1], 1000],
  '0004.mp4': [[25, 1], 975],
  '0005.mp4': [[120_000, 1001], 959],
  'seed.mp4': [[25, 1], 975],
};

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-time-'));
const clip = (name: string): string => path.join(folder, 'media', name);

function lamella(...args: readonly string[]): { readonly status: number; readonly out: string } {
  try {
    const out = execFileSync(process.execPath, [LAMELLA, ...args], {
      cwd: folder,
      encoding: 'utf8',
    });
    return { status: 0, out };
  } catch (cause) {
    const { status, stdout } = cause as { status: number; stdout: string };
    return { status, out: stdout };
  }
}

const timelines = new Map<string, string>();
function timelineOf(plan: string): string {
  const text = timelines.get(plan) ?? lamella('timeline', plan).out;
  timelines.set(plan, text);
  return text;
}

const smallOf = (name: string): string => path.join(folder, 'small', name);

/** By frame of the edit, the number of the clip's frame; a dissolve mixes two and has none. */
function roughCut(plan: string): readonly (number | null)[] {
  const { segments, dissolves } = readOtio(timelineOf(plan), 25);
  const counted = (clip: string) => {
    const name = path.basename(clip);
    return { file: smallOf(name), rate: COUNTED[name]![0] };
  };
  return rendered(segments, [25, 1], counted).map((number, frame) =>
    dissolves.some(({ from, to }) => frame >= from && frame < to) ? null : number,
  );
}

/** From one number to another, each `step` more than the one before. */
const counting = (from: number, count: number, step = 1): readonly number[] =>
  Array.from({ length: count }, (_, index) => from + index * step);

beforeAll(() => {
  for (const made of ['media', 'small']) mkdirSync(path.join(folder, made));
  for (const [name, [rate, frames]] of Object.entries(COUNTED))
    makeCounted(smallOf(name), rate, frames);
  for (const [sample, clips] of Object.entries(CLIPS)) {
    const written = readFileSync(path.join(ROOT, 'samples', sample), 'utf8');
    const done = written.replaceAll(': open', ': { done: 2027-03-02, by: op }');
    writeFileSync(path.join(folder, sample), done + clips);
  }
  const full = { size: '1920x1080', rate: '50', megabitsPerS: 75 };
  makeTake(clip('0002.mp4'), { ...full, seconds: 20 });
  cpSync(clip('0002.mp4'), clip('0003.mp4'));
  // 8 s at 119.88 fps: 959 frames, which play 38.4 s at 25 fps.
  const small = { size: '1920x1080', seconds: 8 };
  makeTake(clip('0004.mp4'), { ...small, rate: '25', seconds: 39, megabitsPerS: 45 });
  makeTake(clip('0005.mp4'), { ...small, rate: '120000/1001', megabitsPerS: 110 });
  // Of stills no bit rate is asked, and more of them than planned are no fault.
  cpSync(clip('0004.mp4'), clip('seed.mp4'));
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('three hours beside two short shots', () => {
  it('sheet: the time-lapse is started first, and the others are shot beside it', () => {
    const { out } = lamella('sheet', TRAY, '--format', 'md');
    const order = out.slice(out.indexOf('## Order of shots'), out.indexOf('## Cards'));
    expect(order.indexOf('| seed-grows |')).toBeLessThan(order.indexOf('| edge-dries |'));
    expect(order).toContain('Shoot `edge-dries` and `crust-breaks` while it runs');
    expect(order).toContain('Takes and waits: 3 h.');
    expect(out).toContain('540 stills, runs 3 h, the last frame 20 s before the end, plays 21.6 s');
  });

  it('clips: the finished clip is as asked, at the rate of the piece', () => {
    const { status, out } = lamella('clips', TRAY, '--format', 'json', '--fail-on', 'warning');
    const { files, cuts } = JSON.parse(out);
    expect(files[0].findings).toEqual([]);
    expect(status).toBe(0);
    // From 2 s on, 8 s of it.
    const hours = cuts.find(({ cut }: { cut: string }) => cut === 'hours');
    expect(hours).toMatchObject({ fromS: 2, toS: 10, missingS: 0 });
  });

  it('timeline: it runs at its own speed, with as many frames as there are stills', () => {
    const [track] = JSON.parse(timelineOf(TRAY)).tracks.children;
    const hours = track.children.find(({ name }: { name: string }) => name === 'hours');
    expect(hours.effects).toEqual([]);
    const { available_range: available, target_url: url } = hours.media_references.DEFAULT_MEDIA;
    expect(url).toBe('media/seed.mp4');
    // As long as the file is, which was made longer than the 540 planned.
    expect(available.duration).toMatchObject({ rate: 25, value: 975 });
  });

  it('the rough cut has every still at its hour, and both clips of the other body at theirs', () => {
    const frames = roughCut(TRAY);
    // The piece is 3 s + 8 s + 4 s at 25 fps; 12 frames of it are the dissolve into the hours.
    expect(frames).toHaveLength(375);
    expect(frames.flatMap((frame, at) => (frame === null ? [at] : []))).toEqual(counting(69, 12));
    // A clip of 50 fps gives every other frame at full speed, and every one at half speed.
    expect(frames.slice(0, 69)).toEqual(counting(0, 69, 2));
    expect(frames.slice(275)).toEqual(counting(0, 100));
    // Arithmetic of an interval: still number n is taken n × 20 s after the first. The cut begins
    // 2 s × 25 = 50 stills in, at 1000 s, and its 200 stills last 199 × 20 s from first to last.
    const takenS = frames.slice(81, 275).map((still) => still! * 20);
    expect(takenS).toEqual(counting(1000 + 6 * 20, 194, 20));
    expect(takenS.at(-1)).toBe(1000 + 199 * 20);
    // One second of the piece is 25 × 20 s: 500 times as fast.
    expect(takenS[25]! - takenS[0]!).toBe(500);
  });
});

describe('a drop at 119.88 fps', () => {
  it('clips: 25 fps are as asked of the mode that the body conforms', () => {
    const { status, out } = lamella('clips', DROP, '--format', 'json', '--fail-on', 'warning');
    const { files, cuts } = JSON.parse(out);
    expect(files[0].findings).toEqual([]);
    expect(status).toBe(0);
    expect(cuts.every(({ missingS }: { missingS: number }) => missingS === 0)).toBe(true);
  });

  it('clips: and not of the mode that keeps its rate', () => {
    const plan = path.join(folder, DROP);
    const written = readFileSync(plan, 'utf8');
    writeFileSync(plan, written.replace('record: slow-25', 'record: fast-120'));
    const { status, out } = lamella('clips', DROP);
    writeFileSync(plan, written);
    expect(status).toBe(1);
    expect(out).toContain('slowed to 25 fps by the body, not kept at 119.88 fps');
  });

  it('timeline: only what is slowed in the edit has a warp', () => {
    const [track] = JSON.parse(timelineOf(DROP)).tracks.children;
    const [slowed, ...ramp]: readonly Clip[] = track.children;
    expect(slowed?.effects).toEqual([]);
    // 100 to 21 %, in pieces of constant speed that together take the mean.
    const pieces = ramp.filter(({ name }) => name === ramp[0]?.name);
    const frames = pieces.map((one) => one.source_range.duration.value);
    const shown = pieces.map((one, at) => frames[at]! * one.effects[0]!.time_scalar);
    const sum = (all: readonly number[]): number => all.reduce((total, next) => total + next, 0);
    // To a frame of the clip: each piece begins on one.
    expect(Math.abs(sum(shown) - 0.605 * sum(frames))).toBeLessThan(1);
  });

  it('the rough cut has every frame of the drop once, and those of the ramp by its speed', () => {
    const frames = roughCut(DROP);
    expect(frames).toHaveLength(250);
    // What the body slows plays frame by frame: 12 s × 25 = 300 in, and for 5 s.
    expect(frames.slice(0, 125)).toEqual(counting(300, 125));
    // Arithmetic of a conformed rate: each of them is 1/119.88 s, so that a second of the piece
    // is 25/119.88 = 0.2085 s of the drop. 119.88 is 120000/1001 (common practice).
    const recordedFps = 120_000 / 1001;
    expect((frames[25]! - frames[0]!) / recordedFps).toBeCloseTo(0.2085, 4);
    // The ramp begins 3 s in. At frame g of 125 its speed is 1 − 0.79·g/125, and of the recorded
    // frames it takes 119.88/25 = 4.7952 as many for each of the piece's.
    const planned = (g: number) =>
      3 * recordedFps + (recordedFps / 25) * (g - (0.79 * g ** 2) / 250);
    const off = frames.slice(125).map((frame, g) => Math.abs(frame! - planned(g)));
    expect(Math.max(...off)).toBeLessThan(1.5);
    // From 4.8 frames at a time to 0.21 × 4.7952 = 1.007. Its pieces begin on whole frames, so that
    // one may be shown again where two meet; none is gone back to.
    const steps = frames.slice(126).map((frame, g) => frame! - frames[125 + g]!);
    expect(Math.max(...steps)).toBe(5);
    expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
  });
});
