/**
 * Pictures that finished stacks are, made by ffmpeg and read by Lamella and by ffprobe
 * (https://ffmpeg.org/ffprobe.html), which nobody here wrote.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { clipFolder, probe } from '../support/ffmpeg.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);

function draw(name: string, size: string, ...more: readonly string[]): string {
  const source = ['-f', 'lavfi', '-i', `testsrc2=size=${size}`, '-frames:v', '1'];
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...source, ...more, at(name)]);
  return at(name);
}

async function written(name: string, bytes: Uint8Array) {
  writeFileSync(at(name), bytes);
  return readClip(at(name));
}

/** A TIFF of one strip; every tag a LONG. BigTIFF: LONG8 and 8-byte offsets. */
function tiff(tags: readonly (readonly [tag: number, value: number])[], isBig: boolean): Buffer {
  const wide = isBig ? 8 : 4;
  const head = isBig ? 16 : 8;
  const out = Buffer.alloc(head + (isBig ? 8 : 2) + tags.length * (4 + 2 * wide) + wide + 64);
  const put = (value: number, from: number): void => {
    if (isBig) out.writeBigUInt64BE(BigInt(value), from);
    else out.writeUInt32BE(value, from);
  };
  out.write(isBig ? 'MM\0+\0\x08\0\0' : 'MM\0*', 0, 'latin1');
  put(head, head - wide);
  if (isBig) put(tags.length, head);
  else out.writeUInt16BE(tags.length, head);
  for (const [index, [tag, value]] of tags.entries()) {
    const from = head + (isBig ? 8 : 2) + index * (4 + 2 * wide);
    out.writeUInt16BE(tag, from);
    out.writeUInt16BE(isBig ? 16 : 4, from + 2);
    put(1, from + 4);
    put(value, from + 4 + wide);
  }
  return out;
}

describe('a picture', () => {
  it.each([
    ['plain.jpg', '1920x1080', []],
    ['odd.jpg', '642x362', []],
    ['plain.png', '1920x1080', []],
    ['deep.png', '640x360', ['-pix_fmt', 'rgb48be']],
    ['plain.tif', '1920x1080', ['-pix_fmt', 'rgb24']],
    ['packed.tif', '642x362', ['-pix_fmt', 'rgb48le', '-compression_algo', 'deflate']],
  ])('%s is as large as ffprobe says', async (name, size, more) => {
    const file = draw(name, size, ...more);
    const { width, height } = probe(file);
    expect(`${width}x${height}`).toBe(size);
    expect(await readClip(file)).toMatchObject({
      state: 'read',
      facts: {
        isPicture: true,
        bytes: statSync(file).size,
        size: { width, height },
        codec: { jpg: 'jpeg', png: 'png', tif: 'tiff' }[name.slice(-3)],
        rate: null,
        durationS: 0,
      },
    });
  });

  it('may be a TIFF of either size and order', async () => {
    const tags = [
      [256, 6048],
      [257, 4024],
      [273, 8],
      [279, 64],
    ] as const;
    for (const isBig of [false, true])
      expect(await written('own.tif', tiff(tags, isBig))).toMatchObject({
        facts: { size: { width: 6048, height: 4024 } },
      });
  });

  it('has to be there to its end', async () => {
    for (const name of ['plain.jpg', 'plain.png', 'plain.tif']) {
      const whole = readFileSync(at(name));
      const reading = await written(`cut-${name}`, whole.subarray(0, whole.length * 0.6));
      expect(reading).toMatchObject({ state: 'unreadable', why: expect.stringMatching(/cut off/) });
    }
  });

  it('says why it can’t be read', async () => {
    const raw = tiff([[254, 1] as const, [256, 160] as const, [257, 120] as const], false);
    expect(await written('raw.tif', raw)).toMatchObject({ why: expect.stringMatching(/raw/) });
    const none = tiff([[305, 0] as const], false);
    expect(await written('none.tif', none)).toMatchObject({ why: 'its header is broken' });
    const jpeg = await written('head.jpg', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 3, 4]));
    expect(jpeg).toMatchObject({ why: 'its header is broken' });
    const far = Buffer.from('MM\0*\xff\xff\xff\xf0', 'latin1');
    expect(await written('far.tif', far)).toMatchObject({ state: 'unreadable' });
  });
});
