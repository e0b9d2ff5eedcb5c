/**
 * Timecode and edit lists of clips that ffmpeg made, against what ffprobe says of them, which
 * nobody here wrote (https://ffmpeg.org/ffprobe.html).
 */
import { readFileSync, writeFileSync } from 'node:fs';
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

/** Bits, most significant first. */
function packed(fields: readonly Field[]): readonly number[] {
  const bits = fields.map(([value, count]) => value.toString(2).padStart(count, '0')).join('');
  // A message that ends within a byte is filled with a 1 and zeros (7.3.2.3.1 of H.264).
  const filled = bits.length % 8 === 0 ? bits : `${bits}1`;
  const whole = filled.padEnd(Math.ceil(filled.length / 8) * 8, '0');
  return whole.match(/.{8}/g)!.map((byte) => Number.parseInt(byte, 2));
}

/** A unit of a stream, with the bytes that keep zeros apart (7.4.1 of H.264). */
function unitOf(head: readonly number[], content: readonly number[]): Buffer {
  const kept: number[] = [];
  for (const byte of content) {
    if (byte <= 3 && kept.at(-1) === 0 && kept.at(-2) === 0) kept.push(3);
    kept.push(byte);
  }
  return Buffer.from([0, 0, 1, ...head, ...kept, 0x80]);
}

type Clock = readonly [hour: number, minute: number, second: number, frame: number];

type Field = readonly [value: number, bits: number];

/** A whole time, its fields in the order of both recommendations; a dropped count is said twice. */
const clockBits = (
  [hour, minute, second, frame]: Clock,
  drops: boolean,
  frameBits: number,
): readonly Field[] => {
  const kind: readonly Field[] = [
    [1, 1],
    [drops ? 4 : 0, 5],
    [1, 1],
    [0, 1],
    [Number(drops), 1],
  ];
  return [...kind, [frame, frameBits], [second, 6], [minute, 6], [hour, 5]];
};

const message = (kind: number, content: readonly number[]) => [kind, content.length, ...content];

const STREAMS: Readonly<
  Record<string, { coding: readonly string[]; unit: (clock: Clock, drops: boolean) => Buffer }>
> = {
  // D.1.3: one time of the frame, and no offset after it in 24 bits.
  h264: {
    coding: [...H264, '-x264-params', 'pic-struct=1'],
    unit: (clock, drops) => {
      const start: readonly Field[] = [
        [0, 4],
        [1, 1],
        [0, 2],
      ];
      const fields: readonly Field[] = [...start, ...clockBits(clock, drops, 8), [0, 24]];
      return unitOf([6], message(1, packed(fields)));
    },
  },
  // D.2.27: one time, and an offset of no bits.
  hevc: {
    coding: [
      '-c:v',
      'libx265',
      '-preset',
      'ultrafast',
      '-x265-params',
      'log-level=error:bframes=0',
    ],
    unit: (clock, drops) => {
      const fields: readonly Field[] = [[1, 2], [1, 1], ...clockBits(clock, drops, 9), [0, 5]];
      return unitOf([78, 1], message(136, packed(fields)));
    },
  },
};

/** The type of a unit's pictures: what comes with a frame stands before them. */
const isPicture = (coding: string, head: number): boolean =>
  coding === 'h264' ? [1, 5].includes(head & 31) : head >> 1 < 32;

/** What the encoder says of the timing of its pictures: a frame, without a time. */
const UNTIMED = Buffer.from([0, 0, 1, 6, 1, 1, 4, 0x80]);

/** The stream with the unit before its first picture, instead of the encoder's own. */
function withUnit(stream: Buffer, coding: string, unit: Buffer): Buffer {
  const own = stream.indexOf(UNTIMED);
  const bare =
    own < 0
      ? stream
      : Buffer.concat([stream.subarray(0, own), stream.subarray(own + UNTIMED.length)]);
  for (let at = 0; at + 4 < bare.length; at++)
    if (bare.readUIntBE(at, 3) === 1 && isPicture(coding, bare[at + 3]!))
      return Buffer.concat([bare.subarray(0, at), unit, bare.subarray(at)]);
  throw new Error('no picture');
}

describe('the timecode in the pictures of a transport stream', () => {
  it.each([
    // By SMPTE ST 12-1, as above; numbers 0 and 1 of minute 1 are left out, so 2 is the 1800th.
    ['h264', '25', [1, 0, 0, 12], false, 90_012],
    ['h264', '30000/1001', [0, 1, 0, 2], true, 1800],
    ['hevc', '24', [10, 0, 1, 3], false, 864_027],
  ] as const)('%s at %s fps', async (coding, rate, clock, drops, frame) => {
    const name = `${coding}-${clock.join('-')}`;
    const { coding: options, unit } = STREAMS[coding]!;
    makeClip(at(`${name}.${coding}`), { rate, size: '64x48', seconds: 0.4, coding: options });
    const stream = readFileSync(at(`${name}.${coding}`));
    writeFileSync(at(`${name}.${coding}`), withUnit(stream, coding, unit(clock, drops)));
    run('ffmpeg', [
      ...['-v', 'error', '-y', '-fflags', '+genpts', '-r', rate, '-i', at(`${name}.${coding}`)],
      ...['-c', 'copy', at(`${name}.ts`)],
    ]);
    const said = run('ffprobe', [
      ...['-v', 'error', '-select_streams', 'v:0', '-read_intervals', '%+#1', '-show_frames'],
      at(`${name}.ts`),
    ]);
    const [hour, minute, second, count] = clock.map((part) => String(part).padStart(2, '0'));
    expect(said).toContain(`timecode=${hour}:${minute}:${second}${drops ? ';' : ':'}${count}`);
    const [n, d = 1] = rate.split('/').map(Number);
    const dropFrame: boolean = drops;
    expect((await factsOf(`${name}.ts`)).startTimecode).toEqual({
      frame,
      rate: { n, d },
      dropFrame,
    });
  });

  it('is left out where the pictures have none', async () => {
    makeClip(at('none.ts'), { size: '64x48', seconds: 0.4, coding: STREAMS.h264!.coding });
    expect(await factsOf('none.ts')).not.toHaveProperty('startTimecode');
  });
});
