/** The file beside another that a write is made in: it goes, however the write ends. */
import { randomBytes } from 'node:crypto';
import { rmSync } from 'node:fs';
import { lstat, readdir, rm } from 'node:fs/promises';
import path from 'node:path';

const OURS = /^\.lamella-[0-9a-f]{16}\.tmp$/;
/** No write takes so long: what is older was left by a run that was killed. */
const STALE_MS = 3_600_000;
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Works with a name beside `file` that nothing has; short, whatever the file is called. Afterwards
 * nothing of that name is there, also where a signal ends the process meanwhile.
 */
export async function withBeside<T>(
  file: string,
  work: (beside: string) => Promise<T>,
): Promise<T> {
  const folder = path.dirname(file);
  const beside = path.join(folder, `.lamella-${randomBytes(8).toString('hex')}.tmp`);
  const ended = (signal: NodeJS.Signals): void => {
    rmSync(beside, { force: true });
    for (const one of SIGNALS) process.removeListener(one, ended);
    // As if nobody had listened, unless somebody else does.
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
  };
  for (const one of SIGNALS) process.on(one, ended);
  try {
    return await work(beside);
  } finally {
    for (const one of SIGNALS) process.removeListener(one, ended);
    await rm(beside, { force: true });
    await sweep(folder);
  }
}

/** Removes what killed runs have left: files of our own naming, old, and never what a link leads to. */
async function sweep(folder: string): Promise<void> {
  try {
    for (const name of await readdir(folder)) {
      if (!OURS.test(name)) continue;
      const left = path.join(folder, name);
      const found = await lstat(left);
      if (found.isFile() && Date.now() - found.mtimeMs > STALE_MS) await rm(left, { force: true });
    }
  } catch {
    // The write itself is done: what was left does no harm, and another write tries again.
  }
}
