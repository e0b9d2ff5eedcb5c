/**
 * Rough cuts of clips that count their own frames in the picture, rendered by FFmpeg from what each
 * format says: FFmpeg finds the frame for each moment, and the picture says which one it was.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import type { ClipReading } from '../../shared/clips/facts.ts';
import type { EditJson } from '../../shared/figures/edit-json.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { makeCounted, rendered } from '../support/timelines/counted.ts';
import { FILES, plannedFrame, RATES, type RandomEdit, textOf } from '../support/timelines/edits.ts';
import { readEdl } from '../support/timelines/edl.ts';
import { readFcpxml } from '../support/timelines/fcpxml.ts';
import { readOtio } from '../support/timelines/otio.ts';
import type { ReadTimeline } from '../support/timelines/shown.ts';

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

beforeAll(async () => {
  for (const [index, { rate, durationS }] of CLIPS.entries()) {
    const [n, d] = RATES[rate]!;
    const file = path.join(folder, FILES[index]!);
    makeCounted(file, [n, d], Math.round((durationS * n) / d));
    readings.set(FILES[index]!, await readClip(file));
  }
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const counted = (clip: string) => ({
  file: path.join(folder, clip),
  rate: RATES[CLIPS[FILES.indexOf(clip)]!.rate]!,
});

/** Frames that are shown wrongly; those of dissolves mix two pictures and are left out. */
function wrong(edit: RandomEdit, figures: EditJson, read: ReadTimeline): readonly string[] {
  const numbers = rendered(read.segments, RATES[edit.rate]!, counted);
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
