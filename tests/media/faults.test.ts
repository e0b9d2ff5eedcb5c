/** What is missing, and what is at fault, of clips that ffmpeg made with each fault in known amount. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { clipFolder, makeClip } from '../support/ffmpeg.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];
const small = { size: '64x48', rate: '25', seconds: 4 } as const;

describe('missing frames', () => {
  // Of frames 0 to 99, 30 and 61 to 63 are left out: 40 ms each.
  const LEFT_OUT = "select='not(eq(n,30)+between(n,61,63))'";

  it.each(['mp4', 'mov', 'mkv', 'ts'])('of %s: place and count', async (kind) => {
    const bent = kind === 'mov' ? ['-c:v', 'libx264', '-bf', '2', '-pix_fmt', 'yuv420p'] : H264;
    const name = at(`gaps.${kind}`);
    makeClip(name, { ...small, coding: ['-vf', LEFT_OUT, '-vsync', 'vfr', ...bent] });
    const reading = await readClip(name);
    expect(reading).toMatchObject({
      state: 'read',
      facts: { rate: { kind: 'constant', rate: { n: 25, d: 1 } } },
    });
    const { gaps = [] } = reading.state === 'read' ? reading.facts : {};
    expect(gaps.map(({ frame, missing }) => [frame, missing])).toEqual([
      [30, 1],
      [60, 3],
    ]);
    expect(gaps[0]?.atS).toBeCloseTo(1.2, 2);
    expect(gaps[1]?.atS).toBeCloseTo(2.44, 2);
  });
});

describe('what is at fault', () => {
  beforeAll(() => {
    makeClip(at('whole.mp4'), { size: '64x48', seconds: 0.4, coding: H264 });
    const whole = readFileSync(at('whole.mp4'));
    writeFileSync(at('half.mp4'), whole.subarray(0, whole.length / 2));
    writeFileSync(at('words.mov'), 'not a clip\n');
    makeClip(at('tape.ts'), { size: '64x48', seconds: 0.4, coding: ['-c:v', 'mpeg2video'] });
    makeClip(at('disc.mpg'), { size: '64x48', seconds: 0.4, coding: ['-c:v', 'mpeg2video'] });
    makeClip(at('old.wmv'), { size: '64x48', seconds: 0.4, coding: ['-c:v', 'wmv2'] });
    makeClip(at('wave.mov'), { size: '64x48', seconds: 0.4, coding: ['-c:v', 'cfhd'] });
  });

  it.each([
    ['half.mp4', 'damaged', /cut off/],
    ['words.mov', 'damaged', /broken|supported/],
    ['tape.ts', 'unsupported', /mpeg2/],
    ['disc.mpg', 'unsupported', /MPEG-PS/],
    ['old.wmv', 'unsupported', /ASF/],
  ])('%s is %s', async (name, fault, why) => {
    const reading = await readClip(at(name));
    expect(reading).toMatchObject({ state: 'unreadable', fault });
    expect(reading.state === 'unreadable' && reading.why).toMatch(why);
  });

  it('a coding that nobody here knows is read as far as its container says', async () => {
    expect(await readClip(at('wave.mov'))).toMatchObject({
      state: 'read',
      facts: { size: { width: 64, height: 48 }, rate: { rate: { n: 25, d: 1 } } },
    });
  });
});
