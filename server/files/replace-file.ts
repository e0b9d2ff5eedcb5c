/** Exchanges what a file holds: readers see all of the old text or all of the new, never a part. */
import {
  access,
  constants,
  type FileHandle,
  open,
  readFile,
  realpath,
  rename,
} from 'node:fs/promises';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { withBeside } from './beside.ts';
import { isInside } from './read-plan.ts';

/** It is not written, for a reason of ours; its message says which. */
export class NotReplaced extends Error {}

/**
 * The new text is written to a file beside it, which then takes its name. Mode and owner stay.
 * @param file absolute path; a link is followed, and stays a link
 * @param root absolute path of the folder that the file, links followed, must lie in
 * @param before what the file is to hold still: who else changed it meanwhile is not written over
 * @throws NotReplaced, or what the system says
 */
export async function replaceFile(
  file: string,
  root: string,
  before: string,
  text: string,
): Promise<void> {
  const [real, realRoot] = await Promise.all([realpath(file), realpath(root)]);
  if (!isInside(realRoot, real))
    throw new NotReplaced(message`it is a link to ${real}, which is outside ${root}`);
  // A new file could take the place of one that is protected, where the folder isn't.
  await access(real, constants.W_OK);
  const now = await readFile(real);
  const wanted = Buffer.from(text, 'utf8');
  if (now.equals(wanted)) return;
  if (!now.equals(Buffer.from(before, 'utf8')))
    throw new NotReplaced(message`it was changed by another program meanwhile`);
  await withBeside(real, async (beside) => {
    await writeWhole(beside, real, wanted);
    if (!(await readFile(real)).equals(now))
      throw new NotReplaced(message`it was changed by another program meanwhile`);
    await rename(beside, real);
  });
  await settleFolder(real);
}

/**
 * Writes a new file to the disk.
 * @param like the file whose mode and owner it gets; null: it gets its maker's
 */
export async function writeWhole(
  file: string,
  like: string | null,
  bytes: Uint8Array,
): Promise<void> {
  if (like === null) {
    const made = await open(file, 'wx');
    try {
      await made.writeFile(bytes);
      await made.sync();
    } finally {
      await made.close();
    }
    return;
  }
  const old = await open(like, 'r');
  try {
    const { mode, uid, gid } = await old.stat();
    const made = await open(file, 'wx', mode & 0o7777);
    try {
      const { uid: ownUid, gid: ownGid } = await made.stat();
      // First: giving a file away clears bits of its mode.
      if (ownUid !== uid || ownGid !== gid) await giveTo(made, uid, gid);
      await made.chmod(mode & 0o7777);
      await made.writeFile(bytes);
      await made.sync();
    } finally {
      await made.close();
    }
  } finally {
    await old.close();
  }
}

/** Only a superuser may give files away; whoever may write the file keeps it otherwise. */
async function giveTo(made: FileHandle, uid: number, gid: number): Promise<void> {
  try {
    await made.chown(uid, gid);
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== 'EPERM') throw cause;
  }
}

/** The new name is on the disk too; where folders can't be synced, the system does it in its time. */
export async function settleFolder(file: string): Promise<void> {
  try {
    const opened = await open(path.dirname(file), 'r');
    try {
      await opened.sync();
    } finally {
      await opened.close();
    }
  } catch {
    // The text itself is safe; Windows and some network disks have no such call.
  }
}
