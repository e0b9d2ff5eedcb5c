/**
 * How pictures are stored, of clips that ffmpeg made, against what ffprobe says of them, which
 * nobody here wrote (https://ffmpeg.org/ffprobe.html).
 */
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import type { ClipPicture } from '../../shared/clips/facts.ts';
import { clipFolder, makeClip } from '../support/ffmpeg.ts';
import { probedPicture } from '../support/probed-picture.ts';
import { manyRuns } from '../support/runs.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const h264 = (format: string, ...more: readonly string[]): readonly string[] => [
  ...['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', format, ...more],
];
const HEVC = ['-c:v', 'libx265', '-preset', 'ultrafast', '-x265-params', 'log-level=error'];
const FIELDS = ['-flags', '+ildct+ilme', '-x264-params', 'tff=1'];
const SQUASHED = ['-vf', 'setsar=4/3'];
const WIDE = [
  '-color_primaries',
  'bt2020',
  '-color_trc',
  'arib-std-b67',
  '-colorspace',
  'bt2020nc',
];
const USUAL = ['-color_primaries', 'bt709', '-color_trc', 'bt709', '-colorspace', 'bt709'];

const CLIPS: Readonly<Record<string, readonly string[]>> = {
  'plain.mp4': h264('yuv420p'),
  'ten.mov': h264('yuv422p10le', ...USUAL),
  'full.mkv': h264('yuv444p', ...WIDE),
  'fields.mp4': h264('yuv420p', ...FIELDS),
  'fields.mkv': h264('yuv420p', ...FIELDS),
  'fields.ts': h264('yuv420p', ...FIELDS, ...USUAL),
  'squashed.mp4': h264('yuv420p', ...SQUASHED),
  'squashed.mkv': h264('yuv420p', ...SQUASHED),
  'squashed.ts': h264('yuv420p', ...SQUASHED),
  'squashed.avi': ['-c:v', 'mjpeg', '-pix_fmt', 'yuvj422p', ...SQUASHED],
  'fields.avi': h264('yuv420p', ...FIELDS),
  'hevc.mp4': [...HEVC, '-pix_fmt', 'yuv420p10le', '-tag:v', 'hvc1', ...WIDE],
  'hevc.ts': [...HEVC, '-pix_fmt', 'yuv422p10le'],
  'prores.mov': ['-c:v', 'prores_ks', '-flags', '+ildct', '-top', '1', ...USUAL],
  'prores.mkv': ['-c:v', 'prores_ks', '-pix_fmt', 'yuva444p10le', ...WIDE],
  'jpeg.mov': ['-c:v', 'mjpeg', '-pix_fmt', 'yuvj444p'],
  'dnx.mov': ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_hqx', '-pix_fmt', 'yuv422p10le'],
  // Whole frames by their coding: the container alone says that they are made of fields.
  'flagged.mkv': [
    ...['-c:v', 'mjpeg', '-pix_fmt', 'yuvj422p', '-vf', 'setfield=tff', '-field_order', 'tt'],
  ],
  'vp9.webm': ['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8', ...WIDE],
};

/** Where ffprobe says otherwise, and why. */
const EXPLAINED: Readonly<Record<string, ClipPicture>> = {
  // Without decoding, ffprobe passes by what the frames of this coding say: it is as it was made.
  'prores.mov': { transfer: 'bt709', primaries: 'bt709' },
  'prores.mkv': { transfer: 'hlg', primaries: 'bt2020' },
  // The container doesn't say it, and ffprobe doesn't look into the stream.
  'fields.mkv': { isInterlaced: true },
};

/** Each coding once; the long run has it in every container. */
const OFTEN = new Set([
  'ten.mov',
  'fields.ts',
  'squashed.avi',
  'hevc.mp4',
  'prores.mkv',
  'flagged.mkv',
  'vp9.webm',
]);
const tried = Object.entries(CLIPS).filter(([name]) => manyRuns(1) > 1 || OFTEN.has(name));

it.each(tried)('%s is stored as ffprobe says', async (name, coding) => {
  makeClip(path.join(folder, name), { size: '320x192', rate: '10', seconds: 0.3, coding });
  const reading = await readClip(path.join(folder, name));
  if (reading.state !== 'read') throw new Error(JSON.stringify(reading));
  expect(reading.facts.picture).toEqual({
    ...probedPicture(path.join(folder, name)),
    ...EXPLAINED[name],
  });
});
