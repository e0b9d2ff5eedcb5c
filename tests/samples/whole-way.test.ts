/**
 * One sample the whole way: planned, shot, verified, cut. Its clips are made here, by a script and for the
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
const SAMPLE = 'watch-movement.shootplan.yaml';

/** A day's clips of that plan, and the film that is made of them. */
const AFTER = `
edit:
  cuts:
    opening: { shot: whole-movement, from: 2 s, duration: 8 s }
    ticking: { shot: balance-wheel, from: 5 s, duration: 20 s, speed: 50 % }
    oil: { shot: jewel-and-oil, duration: 20 s, speed: 100 to 50 % }
    numbers: { shot: numerals, duration: 12 s }

clips:
  whole-movement:
    - { file: media/0001.mp4, verdict: keep }
    - { file: media/0002.mp4, verdict: reject, note: a knock on the bench }
  balance-wheel:
    - { file: media/0003.mp4, verdict: keep, note: swings well from 5 s on }
  jewel-and-oil:
    - { file: media/0004.mov, verdict: keep }
  numerals:
    - { file: media/0005.mp4, verdict: keep }
`;

const FULL = { size: '1920x1080', rate: '50', megabitsPerS: 55 };

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
  writeFileSync(plan, written.replaceAll(': open', ': { done: 2027-03-02, by: op }') + AFTER);
  makeTake(clip('0001.mp4'), { ...FULL, seconds: 20 });
  makeTake(clip('0003.mp4'), { ...FULL, seconds: 40 });
  makeTake(clip('0004.mov'), { ...FULL, seconds: 40 });
  makeTake(clip('0005.mp4'), { ...FULL, seconds: 15 });
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
    // 2 × 20 s, 3 × 40 s, 2 × 40 s, 2 × 15 s at 60 Mb/s.
    expect(sums).toMatchObject({ recordedS: 270, recordedBytes: (270 * 60e6) / 8, cards: 1 });
  });

  it('sheet: has the clips beside what was to be shot', () => {
    const { out } = lamella('sheet', SAMPLE, '--format', 'md');
    expect(out).toContain('media/0003\\.mp4: keep, swings well from 5 s on');
    expect(out).toContain('## Cards and batteries');
  });

  it('verify: all that is kept is as asked, and lasts for its cuts', () => {
    const { status, out } = lamella('verify', SAMPLE, '--format', 'json', '--fail-on', 'warning');
    const { files, clips, cuts, notAsked } = JSON.parse(out);
    expect(files[0].findings).toEqual([]);
    expect(status).toBe(0);
    expect(clips.map(({ state }: { state: string }) => state)).toEqual([
      ...['read', 'not-found', 'read', 'read', 'read'],
    ]);
    // By hand: 2 + 8; 5 + 20 at half speed; 20 at three quarters on average; 12.
    expect(cuts.map(({ cut, toS }: { cut: string; toS: number }) => [cut, toS])).toEqual([
      ['opening', 10],
      ['ticking', 15],
      ['oil', 15],
      ['numbers', 12],
    ]);
    expect(cuts.every(({ missingS }: { missingS: number }) => missingS === 0)).toBe(true);
    expect(notAsked).toEqual([]);
  });

  it('timeline: the cuts refer to the clips that are kept, which are there', () => {
    const { status, out } = lamella('timeline', SAMPLE);
    expect(status).toBe(0);
    const urls = [...out.matchAll(/"target_url": "([^"]+)"/g)].map(([, url]) => url);
    expect(urls).toEqual(
      ['0001.mp4', '0003.mp4', '0004.mov', '0005.mp4'].map((name) => `media/${name}`),
    );
    for (const url of urls) expect(existsSync(path.join(folder, url!))).toBe(true);
  });

  it('verify: the setting that nobody read back is found at the first clip', () => {
    makeTake(clip('test.mp4'), { ...FULL, size: '1280x720', seconds: 2 });
    const args = ['verify', '--test-clip', 'media/test.mp4', '--shot', 'numerals', SAMPLE];
    const { status, out } = lamella(...args);
    rmSync(clip('test.mp4'));
    expect(status).toBe(1);
    expect(out).toMatch(
      /^FAIL {2}media\/test\.mp4 is not what numerals asks for\.\n.*1280 x 720, not 1920 x 1080\./,
    );
  });

  it('verify: a copy that stopped half way is found while the card is still there', () => {
    const half = clip('0005.mp4');
    cpSync(half, `${half}.whole`);
    writeFileSync(half, readFileSync(half).subarray(0, 100_000));
    const { status, out } = lamella('verify', SAMPLE);
    cpSync(`${half}.whole`, half);
    expect(status).toBe(1);
    expect(out).toContain('The clip media/0005.mp4 can’t be read: it is cut off');
  });
});
