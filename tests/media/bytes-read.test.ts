/** How little of a large clip is read without looking at its pictures: counted, not timed. */
import { openSync, statSync, truncateSync, writeSync } from 'node:fs';
import { open } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readClip } from '../../server/media/read-clip.ts';
import { clipFolder, makeClip } from '../support/ffmpeg.ts';
import { makeTake } from '../support/takes.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const TEN_GIGABYTES = 10e9;
/** Headers, the index, and the first frame; ten seconds of a camera's recording are a hundred times as much. */
const MOST_READ = 1 << 20;

/** Bytes that are read from files while `use` runs. */
async function bytesRead(use: () => Promise<unknown>): Promise<number> {
  const probe = await open(at('.'), 'r');
  const prototype = Object.getPrototypeOf(probe);
  await probe.close();
  const { read } = prototype;
  let bytes = 0;
  prototype.read = async function counted(...args: unknown[]) {
    const answer = await read.apply(this, args);
    bytes += answer.bytesRead;
    return answer;
  };
  try {
    await use();
  } finally {
    prototype.read = read;
  }
  return bytes;
}

const MPEG2 = ['-c:v', 'mpeg2video', '-pix_fmt', 'yuv422p', '-b:v', '5M'];
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

const MAKE: Readonly<Record<string, (file: string) => void>> = {
  'take.mp4': (file) =>
    makeTake(file, { size: '64x48', rate: '25', seconds: 40, megabitsPerS: 2000 }),
  'take.mov': (file) =>
    makeTake(file, { size: '64x48', rate: '25', seconds: 40, megabitsPerS: 2000 }),
  'take.mxf': (file) => {
    makeClip(file, { size: '64x48', coding: MPEG2 });
    fill(file);
  },
  'take.mkv': (file) => {
    makeClip(file, { size: '64x48', coding: H264 });
    truncateSync(file, TEN_GIGABYTES);
  },
};

/** A part that fills up, as MXF has them between others (SMPTE ST 377-1, 6.3.3). */
function fill(file: string): void {
  const { size } = statSync(file);
  const head = Buffer.alloc(25);
  Buffer.from('060e2b34010101020301021001000000', 'hex').copy(head);
  head.writeUInt8(0x88, 16);
  head.writeBigUInt64BE(BigInt(TEN_GIGABYTES - size - head.length), 17);
  writeSync(openSync(file, 'r+'), head, 0, head.length, size);
  truncateSync(file, TEN_GIGABYTES);
}

it.each(Object.entries(MAKE))('%s of 10 GB', async (name, make) => {
  make(at(name));
  expect(statSync(at(name)).size).toBe(TEN_GIGABYTES);
  const bytes = await bytesRead(async () =>
    expect(await readClip(at(name))).toMatchObject({ state: 'read', facts: { bytes: 10e9 } }),
  );
  expect(bytes).toBeGreaterThan(1000);
  expect(bytes).toBeLessThan(MOST_READ);
});
