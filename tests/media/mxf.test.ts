/** MXF files that ffmpeg made, against what ffprobe says of them, which nobody here wrote. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { codecFamily } from '../../shared/clips/codec.ts';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { toNumber } from '../../shared/quantity/rational.ts';
import { clipFolder, makeClip, probe, run } from '../support/ffmpeg.ts';
import { probedPicture } from '../support/probed-picture.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const MPEG2 = ['-c:v', 'mpeg2video', '-pix_fmt', 'yuv422p', '-b:v', '5M'];
const WIDE = [
  '-color_primaries',
  'bt2020',
  '-color_trc',
  'arib-std-b67',
  '-colorspace',
  'bt2020nc',
];

interface Recipe {
  readonly rate: string;
  readonly timecode: string;
  readonly size?: string;
  readonly coding: readonly string[];
}

const CLIPS: Readonly<Record<string, Recipe>> = {
  'mpeg2.mxf': { rate: '25', timecode: '10:00:00:05', coding: MPEG2 },
  'fields.mxf': {
    rate: '25',
    timecode: '00:00:00:00',
    coding: [...MPEG2, '-flags', '+ildct+ilme', '-field_order', 'tt', '-vf', 'setsar=16/11'],
  },
  'drop.mxf': { rate: '30000/1001', timecode: '01:00:00;00', coding: MPEG2 },
  'avc.mxf': {
    rate: '50',
    timecode: '00:00:10:49',
    coding: ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv422p10le', ...WIDE],
  },
  'vc3.mxf': {
    rate: '24000/1001',
    timecode: '00:01:00:00',
    size: '320x180',
    coding: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_hqx', '-pix_fmt', 'yuv422p10le'],
  },
};

async function factsOf(name: string): Promise<ClipFacts> {
  const reading = await readClip(at(name));
  if (reading.state !== 'read') throw new Error(`${name}: ${JSON.stringify(reading)}`);
  return reading.facts;
}

it.each(Object.entries(CLIPS))('%s is what ffprobe says', async (name, recipe) => {
  const { rate, timecode, size = '320x192', coding } = recipe;
  makeClip(at(name), { size, rate, seconds: 0.5, coding: [...coding, '-timecode', timecode] });
  const facts = await factsOf(name);
  const theirs = probe(at(name));
  expect(facts.size).toEqual({ width: theirs.width, height: theirs.height });
  expect(facts.rate?.kind === 'constant' && `${facts.rate.rate.n}/${facts.rate.rate.d}`).toBe(
    theirs.rate,
  );
  expect(facts.codec).toBe(codecFamily(theirs.codec));
  expect(facts.durationS).toBeCloseTo(theirs.durationS, 2);
  expect(facts.picture).toEqual(probedPicture(at(name)));
  // By SMPTE ST 12-1; the drop-frame hour is 108 short of 108,000.
  const [h = 0, m = 0, s = 0, f = 0] = timecode.split(/[:;]/).map(Number);
  const counted = Math.round(toNumber(facts.startTimecode!.rate));
  expect(facts.startTimecode).toMatchObject({
    frame: (h * 3600 + m * 60 + s) * counted + f - (timecode.includes(';') ? 108 : 0),
    dropFrame: timecode.includes(';'),
  });
});

it('is cut off where its end is missing', async () => {
  makeClip(at('whole.mxf'), { size: '320x192', seconds: 0.5, coding: MPEG2 });
  const whole = readFileSync(at('whole.mxf'));
  writeFileSync(at('half.mxf'), whole.subarray(0, whole.length / 2));
  expect(await readClip(at('half.mxf'))).toEqual({
    state: 'unreadable',
    why: 'it is cut off: its end is missing',
    fault: 'damaged',
  });
});

it('of sound alone is whole, but holds no pictures', async () => {
  run('ffmpeg', [
    ...['-v', 'error', '-y', '-f', 'lavfi', '-i', 'sine=duration=0.2:sample_rate=48000'],
    ...['-c:a', 'pcm_s16le', '-f', 'mxf_opatom', at('sound.mxf')],
  ]);
  expect(await readClip(at('sound.mxf'))).toMatchObject({ fault: 'unsupported' });
});
