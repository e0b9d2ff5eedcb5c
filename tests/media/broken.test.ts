/** Clips with bytes changed, left out or put in, and clips of a size that no memory holds: all are answered. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { clipFolder, copyClip, makeClip } from '../support/ffmpeg.ts';
import { makeTake } from '../support/takes.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const KINDS = ['mp4', 'mov', 'mkv', 'webm', 'avi', 'ts', 'm2ts', 'mxf'];
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

beforeAll(() => {
  makeClip(at('whole.mp4'), { size: '64x48', rate: '10', coding: H264 });
  for (const kind of ['mov', 'mkv', 'avi', 'ts', 'm2ts'])
    copyClip(at('whole.mp4'), at(`whole.${kind}`));
  makeClip(at('whole.mxf'), {
    size: '64x48',
    coding: ['-c:v', 'mpeg2video', '-pix_fmt', 'yuv422p', '-timecode', '01:00:00:00'],
  });
  makeClip(at('whole.webm'), { size: '64x48', rate: '10', coding: ['-c:v', 'libvpx'] });
});

/** Where, in the first part of the file, what becomes of it, and with which bytes. */
const wound = fc.record({
  where: fc.double({ min: 0, max: 1, noNaN: true }),
  kind: fc.constantFrom('change', 'remove', 'insert', 'cut'),
  bytes: fc.uint8Array({ minLength: 1, maxLength: 12 }),
  nearStart: fc.boolean(),
});

describe.each(KINDS)('%s', (kind) => {
  it('wounded, is read or is not, but always answered', async () => {
    const whole = readFileSync(at(`whole.${kind}`));
    await fc.assert(
      fc.asyncProperty(fc.array(wound, { minLength: 1, maxLength: 4 }), async (wounds) => {
        let bytes = whole;
        for (const { where, kind: what, bytes: others, nearStart } of wounds) {
          const place = Math.floor(
            where * (nearStart ? Math.min(600, bytes.length) : bytes.length),
          );
          const [before, after] = [bytes.subarray(0, place), bytes.subarray(place)];
          if (what === 'change')
            bytes = Buffer.concat([before, others, after.subarray(others.length)]);
          if (what === 'remove') bytes = Buffer.concat([before, after.subarray(others.length)]);
          if (what === 'insert') bytes = Buffer.concat([before, others, after]);
          if (what === 'cut') bytes = before;
        }
        const file = at(`wounded.${kind}`);
        writeFileSync(file, bytes);
        const reading = await readClip(file);
        if (reading.state === 'read') {
          const { durationS, bitsPerS, size } = reading.facts;
          for (const value of [durationS, bitsPerS, size.width, size.height])
            expect(Number.isFinite(value) && value >= 0).toBe(true);
        } else expect(reading.state === 'unreadable' && reading.why).toMatch(/^it/);
      }),
      { numRuns: 150 },
    );
  }, 60_000);
});

it('a clip of five gigabytes is read by its index alone', async () => {
  const file = at('huge.mp4');
  makeTake(file, { size: '320x180', rate: '25', seconds: 20, megabitsPerS: 2000 });
  expect(statSync(file).size).toBe(5e9);
  const reading = await readClip(file);
  expect(reading).toMatchObject({
    state: 'read',
    facts: { bytes: 5e9, durationS: 20, bitsPerS: 2e9 },
  });
});
