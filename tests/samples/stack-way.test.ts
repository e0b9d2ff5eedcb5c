/**
 * A focus stack the whole way: its finished picture among the clips of a sample, held in the timeline,
 * and a rough cut that ffmpeg renders from the timeline alone. Neighbours in the edit have different
 * colours, so each frame of the cut says where it comes from.
 */
import { execFileSync } from 'node:child_process';
import { linkSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { makeClip } from '../support/ffmpeg.ts';
import { makeTake } from '../support/takes.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LAMELLA = path.join(ROOT, 'dist/lamella.cjs');
const PLAN = 'watch-movement.shootplan.yaml';
const STACK = 'balance-cock-still';

/** By shot. Far apart, so that coding moves none to another. */
const COLOURS: Readonly<Record<string, string>> = {
  'whole-movement': 'red',
  'balance-wheel': 'blue',
  'jewel-and-oil': 'red',
  [STACK]: 'white',
  'down-the-cock': 'blue',
  numerals: 'red',
  'stress-in-the-glass': 'blue',
};

const RGB: Readonly<Record<string, readonly number[]>> = {
  red: [255, 0, 0],
  blue: [0, 0, 255],
  white: [255, 255, 255],
};

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-stack-'));
const fileOf = (shot: string): string => `media/${shot}.${shot === STACK ? 'tif' : 'mp4'}`;

const clip = (name: string): string => path.join(folder, name);
/** What is cut with is small; the picture needs none. */
const proxyOf = (file: string): string =>
  file.endsWith('.tif') ? file : file.replace('media', 'proxies');

const lamella = (...args: readonly string[]): string =>
  execFileSync(process.execPath, [LAMELLA, ...args], { cwd: folder, encoding: 'utf8' });

const ffmpeg = (...args: readonly string[]): Buffer =>
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...args], { cwd: folder, maxBuffer: 1e8 });

interface Clip {
  readonly OTIO_SCHEMA: string;
  readonly source_range: Readonly<
    Record<'start_time' | 'duration', { readonly value: number; readonly rate: number }>
  >;
  readonly effects: readonly { readonly OTIO_SCHEMA: string }[];
  readonly media_references: { readonly DEFAULT_MEDIA: { readonly target_url: string } };
}

beforeAll(() => {
  for (const made of ['media', 'proxies']) mkdirSync(clip(made));
  const shots = Object.entries(COLOURS);
  const clips = shots.map(([shot]) => `  ${shot}: [ { file: ${fileOf(shot)}, verdict: keep } ]\n`);
  const written = readFileSync(path.join(ROOT, 'samples', PLAN), 'utf8');
  const done = written.replaceAll(': open', ': { done: 2027-03-02, by: op }');
  writeFileSync(path.join(folder, PLAN), `${done}\nclips:\n${clips.join('')}`);
  const take = clip('take.mp4');
  makeTake(take, { size: '1920x1080', rate: '50', seconds: 40, megabitsPerS: 55 });
  for (const colour of ['red', 'blue'])
    makeClip(clip(`${colour}.mp4`), { size: '16x16', rate: '25', seconds: 14, colour });
  for (const [shot, colour] of shots.filter(([name]) => name !== STACK)) {
    linkSync(take, clip(fileOf(shot)));
    linkSync(clip(`${colour}.mp4`), clip(proxyOf(fileOf(shot))));
  }
  const drawn = ['-f', 'lavfi', '-i', 'color=c=white:size=3840x2560', '-frames:v', '1'];
  ffmpeg(...drawn, '-pix_fmt', 'gray', fileOf(STACK));
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('clips: the picture is as asked of a stack, and needs no length', () => {
  const out = lamella('clips', PLAN, '--format', 'json', '--fail-on', 'warning');
  const { clips, files, cuts } = JSON.parse(out);
  expect(files[0].findings).toEqual([]);
  const picture = clips.find(({ shot }: { shot: string }) => shot === STACK);
  expect(picture.read).toMatchObject({ isPicture: true, widthPx: 3840, heightPx: 2560 });
  // Every other cut is in a clip that is long enough.
  expect(cuts.map(({ cut }: { cut: string }) => cut)).not.toContain('engraving');
  expect(cuts).toHaveLength(6);
});

it('the rough cut has every frame where the plan has it', () => {
  const track = JSON.parse(lamella('timeline', PLAN)).tracks.children[0];
  const clips: readonly Clip[] = track.children.filter(
    ({ OTIO_SCHEMA: schema }: Clip) => schema === 'Clip.2',
  );
  const isHeld = ({ effects }: Clip): boolean =>
    effects.some(({ OTIO_SCHEMA: schema }) => schema === 'FreezeFrame.1');
  const inputs = clips.flatMap((clip) => {
    const { source_range: range, media_references: media } = clip;
    const seconds = (of: 'start_time' | 'duration') => String(range[of].value / range[of].rate);
    const part = ['-ss', seconds('start_time'), '-t', seconds('duration')];
    return [...(isHeld(clip) ? [] : part), '-i', proxyOf(media.DEFAULT_MEDIA.target_url)];
  });
  const small = clips.map((clip, index) => {
    const more = clip.source_range.duration.value - 1;
    const rate = isHeld(clip) ? `loop=loop=${more}:size=1,setpts=N/25/TB` : 'fps=25';
    return `[${index}:v]scale=2:2:flags=neighbor,setsar=1,${rate}[v${index}];`;
  });
  const joined = `${clips.map((_, index) => `[v${index}]`).join('')}concat=n=${clips.length}`;
  const pixels = ffmpeg(
    ...[...inputs, '-filter_complex', `${small.join('')}${joined}[out]`, '-map', '[out]'],
    ...['-f', 'rawvideo', '-pix_fmt', 'rgb24', '-'],
  );
  const { edit } = JSON.parse(lamella('figures', PLAN, '--format', 'json'));
  expect(pixels.length).toBe(edit.totalFrames * 2 * 2 * 3);
  const nearest = (frame: number): string => {
    const seen = [...pixels.subarray(frame * 12, frame * 12 + 3)];
    const off = (of: readonly number[]) =>
      of.reduce((sum, value, index) => sum + Math.abs(value - seen[index]!), 0);
    return Object.entries(RGB).reduce((a, b) => (off(b[1]) < off(a[1]) ? b : a))[0];
  };
  for (const { shot, startFrame, durationFrames } of edit.cuts) {
    const frames = Array.from({ length: durationFrames }, (_, index) =>
      nearest(startFrame + index),
    );
    expect([...new Set(frames)], shot).toEqual([COLOURS[shot]]);
  }
});
