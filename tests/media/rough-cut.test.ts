/**
 * Rough cuts of clips that count their own frames in the picture, rendered by FFmpeg from what each
 * format says: FFmpeg finds the frame for each moment, and the picture says which one it was.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import type { ClipReading } from '../../shared/clips/facts.ts';
import type { EditJson } from '../../shared/figures/edit-json.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { FILES, plannedFrame, RATES, type RandomEdit, textOf } from '../support/timelines/edits.ts';
import { readEdl } from '../support/timelines/edl.ts';
import { readFcpxml } from '../support/timelines/fcpxml.ts';
import { readOtio } from '../support/timelines/otio.ts';
import type { ReadTimeline, Segment } from '../support/timelines/shown.ts';

/** Blocks of a picture, black for 0 and white for 1: the frame's number in binary. */
const [BITS, BLOCK, HEIGHT] = [10, 8, 16];
const WIDTH = BITS * BLOCK;
const PICTURE = WIDTH * HEIGHT;

const CLIPS: RandomEdit['clips'] = [
  { rate: '50 fps', durationS: 14, hasTimecode: false },
  { rate: '59.94 fps', durationS: 12, hasTimecode: false },
  { rate: '24 fps', durationS: 14, hasTimecode: false },
];

const cut = (
  shot: string,
  from: number,
  duration: string,
  speed = '100 %',
  transition = 'cut',
): RandomEdit['cuts'][number] => ({ shot, from, duration, speed, transition });

const EDITS: readonly RandomEdit[] = [
  {
    ...{ rate: '25 fps', isDrop: false, clips: CLIPS },
    cuts: [
      cut('frost', 113, '30 frames'),
      cut('frost', 300, '41 frames', '50 %'),
      cut('skin', 207, '30 frames', '33.3 %', 'dissolve 8 frames'),
      cut('frost', 411, '40 frames', '100 to 25 %'),
      cut('skin', 400, '35 frames', '20 to 300 %', 'dissolve 6 frames'),
    ],
  },
  {
    ...{ rate: '29.97 fps', isDrop: false, clips: CLIPS },
    cuts: [
      cut('skin', 101, '31 frames'),
      cut('frost', 211, '29 frames', '80 %'),
      cut('skin', 333, '44 frames', '50 to 200 %'),
    ],
  },
];

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-rough-'));
const readings = new Map<string, ClipReading>();

const ffmpeg = (args: readonly string[], input?: Uint8Array): Buffer =>
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...args], {
    ...(input && { input }),
    maxBuffer: 2 ** 28,
  });

beforeAll(async () => {
  for (const [index, { rate, durationS }] of CLIPS.entries()) {
    const [n, d] = RATES[rate]!;
    const count = Math.round((durationS * n) / d);
    const pictures = new Uint8Array(count * PICTURE);
    for (let at = 0; at < pictures.length; at++) {
      const bit = Math.floor((at % WIDTH) / BLOCK);
      pictures[at] = (Math.floor(at / PICTURE) >> bit) & 1 ? 235 : 16;
    }
    const file = path.join(folder, FILES[index]!);
    const raw = [
      '-f',
      'rawvideo',
      '-pix_fmt',
      'gray',
      '-s',
      `${WIDTH}x${HEIGHT}`,
      '-r',
      `${n}/${d}`,
    ];
    ffmpeg([...raw, '-i', '-', '-c:v', 'mpeg4', '-q:v', '2', file], pictures);
    readings.set(FILES[index]!, await readClip(file));
  }
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/**
 * The numbers in the pictures, in the order of the segments. A moment shows the last frame that has
 * begun (`round=up` of the fps filter); ten nanoseconds keep a rounded time from being late.
 */
function rendered(
  segments: readonly Segment[],
  rate: readonly [number, number],
): readonly number[] {
  // Each clip is decoded once, and shared among its segments.
  const clips = [...new Set(segments.map(({ clip }) => clip))];
  const inputs = clips.flatMap((clip) => ['-i', path.join(folder, clip)]);
  const shares = clips.map((clip, input) => {
    const outputs = segments.flatMap((each, index) => (each.clip === clip ? [`[s${index}]`] : []));
    return `[${input}:v]split=${outputs.length}${outputs.join('')}`;
  });
  const fps = rate[0] / rate[1];
  const filters = segments.map(({ clip, place, perFrame, frames }, index) => {
    const [n, d] = RATES[CLIPS[FILES.indexOf(clip)]!.rate]!;
    const [from, speed] = [(place * d) / n, (perFrame * fps * d) / n];
    const time = `(((PTS-STARTPTS)*TB-${from.toFixed(12)})/${speed.toFixed(12)}/TB)-10`;
    return [
      `[s${index}]settb=1/1000000000,setpts=${time}`,
      `fps=fps=${rate[0]}/${rate[1]}:round=up:start_time=0`,
      `trim=end_frame=${frames},setpts=N[v${index}]`,
    ].join(',');
  });
  const joined = `${segments.map((_, index) => `[v${index}]`).join('')}concat=n=${segments.length}[out]`;
  const graph = ['-filter_complex', [...shares, ...filters, joined].join(';'), '-map', '[out]'];
  const raw = ['-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'gray', '-'];
  const pictures = ffmpeg([...inputs, ...graph, ...raw]);
  return Array.from({ length: pictures.length / PICTURE }, (_, frame) => {
    let number = 0;
    for (let bit = 0; bit < BITS; bit++) {
      const middle = frame * PICTURE + (HEIGHT / 2) * WIDTH + bit * BLOCK + BLOCK / 2;
      if (pictures[middle]! > 128) number += 2 ** bit;
    }
    return number;
  });
}

/** Frames that are shown wrongly; those of dissolves mix two pictures and are left out. */
function wrong(edit: RandomEdit, figures: EditJson, read: ReadTimeline): readonly string[] {
  const numbers = rendered(read.segments, RATES[edit.rate]!);
  expect(numbers).toHaveLength(figures.totalFrames!);
  return numbers.flatMap((number, frame) => {
    if (read.dissolves.some(({ from, to }) => frame >= from && frame < to)) return [];
    const index = figures.cuts.findLastIndex(({ startFrame }) => startFrame! <= frame);
    const planned = plannedFrame(edit, figures, index, frame - figures.cuts[index]!.startFrame!);
    const off = Math.abs(number - planned.frame);
    return off <= (planned.isRamp ? 1 : 0) ? [] : [`${frame}: ${number}, not ${planned.frame}`];
  });
}

it.each(EDITS)(
  'every frame of a rough cut at $rate is the planned one, in every format',
  (edit) => {
    const core = coreWith(textOf(edit));
    const figures = core.editFigures(PLAN)!;
    const text = (format: 'otio' | 'fcpxml' | 'edl'): string => {
      const made = core.timeline(PLAN, format, { readings, startTimecode: '01:00:00:00' });
      if (!made.ok) throw new Error(made.why);
      return made.text;
    };
    const rate = RATES[edit.rate]!;
    expect(wrong(edit, figures, readOtio(text('otio'), rate[0] / rate[1]))).toEqual([]);
    expect(wrong(edit, figures, readFcpxml(text('fcpxml')))).toEqual([]);
    const list = readEdl(text('edl'), rate, '01:00:00:00', () => '00:00:00:00');
    expect(wrong(edit, figures, list)).toEqual([]);
  },
);
