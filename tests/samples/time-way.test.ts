/**
 * The sample with a time-lapse the whole way: three hours of stills are one short clip in the edit,
 * beside two clips of the other body. The clips are made here, by a script and for the test's time.
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
const SAMPLE = 'alum-tray.shootplan.yaml';

const CLIPS = `
clips:
  seed-grows:
    - { file: media/seed.mov, verdict: keep, note: put together from 550 stills }
  rim-dries:
    - { file: media/0002.mp4, verdict: keep }
  crust-breaks:
    - { file: media/0003.mp4, verdict: keep }
`;

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
  const written = readFileSync(path.join(ROOT, 'samples', SAMPLE), 'utf8');
  writeFileSync(
    path.join(folder, SAMPLE),
    written.replaceAll(': open', ': { done: 2027-03-02, by: op }') + CLIPS,
  );
  // 550 stills at 25 fps; of stills no bit rate is asked.
  makeTake(clip('seed.mov'), { size: '1920x1080', rate: '25', seconds: 22, megabitsPerS: 8 });
  const full = { size: '1920x1080', rate: '50', megabitsPerS: 75 };
  makeTake(clip('0002.mp4'), { ...full, seconds: 20 });
  cpSync(clip('0002.mp4'), clip('0003.mp4'));
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('three hours beside two short shots', () => {
  it('sheet: the time-lapse is started first, and the others are shot beside it', () => {
    const { out } = lamella('sheet', SAMPLE, '--format', 'md');
    const order = out.slice(out.indexOf('## Order of shots'), out.indexOf('## Cards'));
    expect(order.indexOf('| seed-grows |')).toBeLessThan(order.indexOf('| rim-dries |'));
    expect(order).toContain('Shoot `rim-dries` and `crust-breaks` while it runs');
    expect(order).toContain('Takes and waits: 3 h.');
    expect(out).toContain('540 stills, runs 3 h, plays 21.6 s');
  });

  it('clips: the finished clip is as asked, at the rate of the piece', () => {
    const { status, out } = lamella('clips', SAMPLE, '--format', 'json', '--fail-on', 'warning');
    const { files, cuts } = JSON.parse(out);
    expect(files[0].findings).toEqual([]);
    expect(status).toBe(0);
    // From 2 s on, 8 s of it.
    const hours = cuts.find(({ cut }: { cut: string }) => cut === 'hours');
    expect(hours).toMatchObject({ fromS: 2, toS: 10, missingS: 0 });
  });

  it('timeline: it runs at its own speed, with as many frames as there are stills', () => {
    const { out } = lamella('timeline', SAMPLE);
    const [track] = JSON.parse(out).tracks.children;
    const hours = track.children.find(({ name }: { name: string }) => name === 'hours');
    expect(hours.effects).toEqual([]);
    const { available_range: available, target_url: url } = hours.media_references.DEFAULT_MEDIA;
    expect(url).toBe('media/seed.mov');
    expect(available.duration).toMatchObject({ rate: 25, value: 540 });
  });
});
