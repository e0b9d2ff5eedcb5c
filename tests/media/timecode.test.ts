/**
 * Timecode and edit lists of clips that ffmpeg made, against what ffprobe says of them, which
 * nobody here wrote (https://ffmpeg.org/ffprobe.html).
 */
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { clipFolder, copyClip, makeClip, run } from '../support/ffmpeg.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

async function factsOf(name: string): Promise<ClipFacts> {
  const reading = await readClip(at(name));
  if (reading.state !== 'read') throw new Error(`${name}: ${JSON.stringify(reading)}`);
  return reading.facts;
}

/** As ffprobe prints it: "10:00:00:00", with ; where numbers are left out. */
const theirTimecode = (name: string): string =>
  run('ffprobe', [
    ...['-v', 'error', '-select_streams', 'v:0'],
    ...['-show_entries', 'stream_tags=timecode:format_tags=timecode', '-of', 'csv=p=0', at(name)],
  ])
    .trim()
    .split('\n')[0]!;

const theirFrames = (name: string, ...options: readonly string[]): number =>
  Number(
    run('ffprobe', [
      ...['-v', 'error', ...options, '-select_streams', 'v:0', '-count_frames'],
      ...['-show_entries', 'stream=nb_read_frames', '-of', 'csv=p=0', at(name)],
    ]).trim(),
  );

describe('the timecode of the first frame', () => {
  it.each([
    // By SMPTE ST 12-1: an hour of 29.97 drop-frame has 108,000 − 108 frames, one of 25 has 90,000.
    ['hour.mov', '25', '01:00:00:12', 90_012, false],
    ['ten.mp4', '24000/1001', '10:00:00:00', 864_000, false],
    ['tagged.mkv', '30000/1001', '01:00:00;00', 107_892, true],
    ['drop.mov', '30000/1001', '01:00:00;00', 107_892, true],
    ['info.avi', '30000/1001', '01:00:00;00', 107_892, true],
  ])('%s at %s fps: %s', async (name, rate, written, frame, dropFrame) => {
    makeClip(at(name), {
      rate,
      size: '64x48',
      seconds: 0.2,
      coding: [...H264, '-timecode', written],
    });
    expect(theirTimecode(name)).toBe(written);
    const [n, d = 1] = rate.split('/').map(Number);
    expect((await factsOf(name)).startTimecode).toEqual({ frame, rate: { n, d }, dropFrame });
  });

  it('is left out where the file has none', async () => {
    makeClip(at('bare.mov'), { size: '64x48', seconds: 0.2, coding: H264 });
    expect(await factsOf('bare.mov')).not.toHaveProperty('startTimecode');
  });
});

describe('the edit list', () => {
  beforeAll(() => {
    const grouped = [...H264, '-g', '50', '-bf', '0'];
    makeClip(at('whole.mp4'), { size: '64x48', seconds: 2, coding: grouped });
    // ffmpeg copies from the last whole picture on and leaves out what comes before by the list.
    run('ffmpeg', [
      ...['-v', 'error', '-y', '-ss', '0.4', '-i', at('whole.mp4'), '-c', 'copy', at('late.mp4')],
    ]);
    run('ffmpeg', [
      ...['-v', 'error', '-y', '-itsoffset', '0.5', '-i', at('whole.mp4')],
      ...['-f', 'lavfi', '-i', 'anullsrc', '-t', '3', '-map', '0:v', '-map', '1:a'],
      ...['-c:v', 'copy', at('delayed.mp4')],
    ]);
    makeClip(at('reordered.mp4'), {
      size: '64x48',
      coding: ['-c:v', 'libx264', '-bf', '3', '-pix_fmt', 'yuv420p'],
    });
    copyClip(at('reordered.mp4'), at('reordered.mov'));
  });

  it('that leaves out the first frames', async () => {
    const { edit, durationS } = await factsOf('late.mp4');
    const [shown, all] = [
      theirFrames('late.mp4'),
      theirFrames('late.mp4', '-ignore_editlist', '1'),
    ];
    expect(all - shown).toBe(10);
    expect(edit).toEqual({ skippedFrames: 10, leftFrames: 0, shownS: 1.6, emptyS: 0, pieces: 1 });
    expect(durationS).toBeCloseTo(1.6, 6);
  });

  it('that begins with nothing', async () => {
    const { edit, durationS } = await factsOf('delayed.mp4');
    expect(edit).toMatchObject({ skippedFrames: 0, emptyS: 0.5, pieces: 1 });
    expect(durationS).toBeCloseTo(2, 1);
  });

  it.each(['whole.mp4', 'reordered.mp4', 'reordered.mov'])(
    'of %s shows every frame, and is not mentioned',
    async (name) => {
      expect(await factsOf(name)).not.toHaveProperty('edit');
      expect(theirFrames(name)).toBe(theirFrames(name, '-ignore_editlist', '1'));
    },
  );
});
