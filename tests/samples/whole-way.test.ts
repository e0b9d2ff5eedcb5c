/**
 * One sample the whole way: planned, shot, checked, cut. Its clips are made here, by a script and for the
 * test's time; all that is asked of them stands in the plan.
 */
import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeTake } from '../support/takes.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LAMELLA = path.join(ROOT, 'dist/lamella.cjs');
const SAMPLE = 'salt-garden.shootplan.yaml';

/** A day's clips of that plan. */
const CLIPS = `
clips:
  whole-slide:
    - { file: media/0001.mp4, verdict: keep }
    - { file: media/0002.mp4, verdict: reject, note: a knock on the bench }
  front-creeps:
    - { file: media/0003.mp4, verdict: keep, note: the line runs straight from 4 s on }
  one-grain:
    - { file: media/0004.mov, verdict: keep }
`;

const FULL = { size: '1920x1080', rate: '50', megabitsPerS: 55 };
const LARGE = { size: '3840x2160', rate: '25', megabitsPerS: 95 };

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-way-'));
const plan = path.join(folder, SAMPLE);
const clip = (name: string): string => path.join(folder, 'media', name);

function lamella(...args: readonly string[]): { readonly status: number; readonly out: string } {
  try {
    return {
      status: 0,
      out: execFileSync(process.execPath, [LAMELLA, ...args], { cwd: folder, encoding: 'utf8' }),
    };
  } catch (cause) {
    const { status, stdout } = cause as { status: number; stdout: string };
    return { status, out: stdout };
  }
}

beforeAll(() => {
  mkdirSync(path.join(folder, 'media'));
  const written = readFileSync(path.join(ROOT, 'samples', SAMPLE), 'utf8');
  writeFileSync(plan, written.replaceAll(': open', ': { done: 2027-03-02, by: op }') + CLIPS);
  makeTake(clip('0001.mp4'), { ...LARGE, seconds: 20 });
  makeTake(clip('0003.mp4'), { ...FULL, seconds: 30 });
  makeTake(clip('0004.mov'), { ...FULL, seconds: 20 });
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the sample, its day and its film', () => {
  it('check: nothing is an error', () => {
    const { status, out } = lamella('check', SAMPLE, '--format', 'json');
    expect(status).toBe(0);
    const [{ findings }] = JSON.parse(out).files;
    expect(findings.filter(({ severity }: { severity: string }) => severity === 'error')).toEqual(
      [],
    );
  });

  it('figures: what the day records is what the clips’ lengths come to', () => {
    const { out } = lamella('figures', SAMPLE, '--format', 'json');
    const [sums] = JSON.parse(out).recording;
    // 2 × 20 s at 100 Mb/s, 3 × 30 s and 2 × 20 s at 60 Mb/s.
    const bytes = (40 * 100e6 + 130 * 60e6) / 8;
    expect(sums).toMatchObject({ recordedS: 170, recordedBytes: bytes, cards: 1, batteries: 1 });
  });

  it('sheet: has the clips beside what was to be shot', () => {
    const { out } = lamella('sheet', SAMPLE, '--format', 'md');
    expect(out).toContain('keep, the line runs straight from 4 s on');
    expect(out).toContain('## Cards and batteries');
  });

  it('clips: all that is kept is as asked, and lasts for its cuts', () => {
    const { status, out } = lamella('clips', SAMPLE, '--format', 'json', '--fail-on', 'warning');
    const { files, clips, cuts, notAsked } = JSON.parse(out);
    expect(files[0].findings).toEqual([]);
    expect(status).toBe(0);
    expect(clips.map(({ state }: { state: string }) => state)).toEqual([
      ...['read', 'not-found', 'read', 'read'],
    ]);
    // By hand, at 100 bpm, where a bar is 2.4 s: two of them from 2 s on, and 8 frames of dissolve
    // behind; a ramp to half speed over 4.8 s from 4 s on, which uses three quarters of it.
    const ends = new Map(cuts.map(({ cut, toS }: { cut: string; toS: number }) => [cut, toS]));
    expect(ends.get('still-wet')).toBeCloseTo(2 + 4.8 + 8 / 25, 9);
    expect(ends.get('edge-comes')).toBeCloseTo(4 + 4.8 * 0.75, 9);
    expect(ends.size).toBe(6);
    expect(cuts.every(({ missingS }: { missingS: number }) => missingS === 0)).toBe(true);
    expect(notAsked).toEqual([]);
  });

  it('timeline: the cuts refer to the clips that are kept, which are there', () => {
    const { status, out } = lamella('timeline', SAMPLE);
    expect(status).toBe(0);
    const urls = [...out.matchAll(/"target_url": "([^"]+)"/g)].map(([, url]) => url);
    const kept = ['0001.mp4', '0003.mp4', '0004.mov'].map((name) => `media/${name}`);
    expect([...new Set(urls)].sort()).toEqual(kept);
    for (const url of urls) expect(existsSync(path.join(folder, url!))).toBe(true);
  });

  it('clips: the setting that nobody read back is found at the first clip', () => {
    makeTake(clip('test.mp4'), { ...FULL, size: '1280x720', seconds: 2 });
    const args = ['clips', '--test-clip', 'media/test.mp4', '--shot', 'one-grain', SAMPLE];
    const { status, out } = lamella(...args);
    rmSync(clip('test.mp4'));
    expect(status).toBe(1);
    expect(out).toMatch(
      /^FAIL {2}media\/test\.mp4 doesn't match one-grain\.\n.*1280 × 720, not 1920 × 1080\./,
    );
  });

  it('clips: a copy that stopped half way is found while the card is still there', () => {
    const half = clip('0004.mov');
    cpSync(half, `${half}.whole`);
    writeFileSync(half, readFileSync(half).subarray(0, 100_000));
    const { status, out } = lamella('clips', SAMPLE);
    cpSync(`${half}.whole`, half);
    expect(status).toBe(1);
    expect(out).toContain("The clip media/0004.mov can't be read: it is cut off");
  });
});
