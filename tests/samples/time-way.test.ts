/**
 * Time the whole way, in two samples: three hours of stills as one short clip beside two clips of the
 * other body, and a drop at 119.88 fps, which the body slows in one shot and the edit in the other.
 * The clips are made here, by a script and for the test's time.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeTake } from '../support/takes.ts';

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

beforeAll(() => {
  mkdirSync(path.join(folder, 'media'));
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
    expect(out).toContain('540 stills, runs 3 h, plays 21.6 s');
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
    const { out } = lamella('timeline', TRAY);
    const [track] = JSON.parse(out).tracks.children;
    const hours = track.children.find(({ name }: { name: string }) => name === 'hours');
    expect(hours.effects).toEqual([]);
    const { available_range: available, target_url: url } = hours.media_references.DEFAULT_MEDIA;
    expect(url).toBe('media/seed.mp4');
    // As long as the file is, which was made longer than the 540 planned.
    expect(available.duration).toMatchObject({ rate: 25, value: 975 });
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
    const { out } = lamella('timeline', DROP);
    const [track] = JSON.parse(out).tracks.children;
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
});
