/** The thread that clips are read in: whatever one of them does, the others are read. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { WorkerClipReader } from '../../server/media/clip-reader.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-reader-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Does what the name of the clip says. */
const script = path.join(folder, 'worker.cjs');
writeFileSync(
  script,
  `const { parentPort } = require('node:worker_threads');
parentPort.on('message', (file) => {
  if (file === 'spins') for (;;);
  if (file === 'waits') return;
  if (file === 'throws') throw new Error('broken');
  if (file === 'leaves') process.exit(3);
  if (file === 'prints') console.log('noise');
  parentPort.postMessage({ state: 'unreadable', why: file });
});
`,
);

const never = new AbortController().signal;
const reading = (why: string) => ({ state: 'unreadable', why });

it('reads on behind one that never ends, breaks down or leaves', async () => {
  const reader = new WorkerClipReader(script, 1000);
  const answers = [];
  for (const file of ['first', 'second', 'spins', 'waits', 'throws', 'leaves', 'prints', 'last'])
    answers.push(await reader.read(file, never));
  await reader.close();
  expect(answers).toEqual(
    [
      ...['first', 'second'],
      ...['it could not be read within 1 s', 'it could not be read within 1 s'],
      ...['its contents broke the reader', 'its contents broke the reader'],
      ...['prints', 'last'],
    ].map(reading),
  );
});

it('stops at once when it is told to', async () => {
  const reader = new WorkerClipReader(script);
  const stop = new AbortController();
  const waiting = reader.read('waits', stop.signal);
  stop.abort(new Error('stopped'));
  await expect(waiting).rejects.toThrow('stopped');
  await expect(reader.read('waits', stop.signal)).rejects.toThrow('stopped');
  expect(await reader.read('next', never)).toEqual(reading('next'));
  await reader.close();
});
