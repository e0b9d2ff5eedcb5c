/** Puts a whole file in its place: a new one, or one instead of a file that Lamella wrote. */
import { constants, copyFile, link, lstat, open, rename } from 'node:fs/promises';
import { message } from '../../shared/words/message.ts';
import { withBeside } from './beside.ts';
import { isOwn, type OutputKind } from './own-output.ts';
import { NotReplaced, settleFolder, writeWhole } from './replace-file.ts';

/** More than any mark needs. */
const MARK_BYTES = 8192;

/** What may be replaced: nothing, what Lamella wrote of that kind, or any file. */
export type Replaceable = 'nothing' | OutputKind | 'anything';

/**
 * Readers see all of the old file or all of the new one. A link is never followed: with `anything`
 * the file takes the link's place.
 * @param file absolute path
 * @throws NotReplaced, or what the system says
 */
export async function placeFile(
  file: string,
  bytes: Uint8Array,
  replaceable: Replaceable,
): Promise<void> {
  // First, so that a large file isn't written for nothing.
  const isThere = await refuseOther(file, replaceable);
  await withBeside(file, async (beside) => {
    await writeWhole(beside, isThere === 'file' ? file : null, bytes);
    await takePlace(beside, file, replaceable);
  });
  await settleFolder(file);
}

async function takePlace(beside: string, file: string, replaceable: Replaceable): Promise<void> {
  try {
    // Fails where there is a file already, with nothing in between.
    await linked(beside, file);
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== 'EEXIST') throw cause;
    // Again: what was put there meanwhile may be somebody's.
    await refuseOther(file, replaceable);
    await rename(beside, file);
  }
}

/** Some disks, such as memory cards, have no second names for a file. */
async function linked(beside: string, file: string): Promise<void> {
  try {
    await link(beside, file);
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'EEXIST') throw cause;
    await copyFile(beside, file, constants.COPYFILE_EXCL);
  }
}

/** @throws NotReplaced where something is there that may not be replaced */
async function refuseOther(
  file: string,
  replaceable: Replaceable,
): Promise<'file' | 'link' | 'nothing'> {
  const found = await lstat(file).catch((cause: NodeJS.ErrnoException) => {
    if (cause.code === 'ENOENT') return null;
    throw cause;
  });
  if (found === null) return 'nothing';
  if (found.isDirectory()) throw new NotReplaced(message`it is a folder`);
  if (replaceable === 'nothing')
    throw new NotReplaced(message`it already exists and was not overwritten`);
  if (!found.isFile() && !found.isSymbolicLink())
    throw new NotReplaced(message`it is a pipe or a device, not a file`);
  if (replaceable === 'anything') return found.isFile() ? 'file' : 'link';
  if (found.isSymbolicLink())
    throw new NotReplaced(message`it is a link; --force puts the file in its place`);
  if (!(await wasWrittenByUs(file, replaceable)))
    throw new NotReplaced(message`it exists and Lamella did not write it; --force replaces it`);
  return 'file';
}

async function wasWrittenByUs(file: string, kind: OutputKind): Promise<boolean> {
  // A link that has just taken the file's place is not followed, and a pipe is not waited for.
  const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
  const opened = await open(file, flags);
  try {
    const { size } = await opened.stat();
    const part = async (from: number): Promise<Uint8Array> => {
      const { buffer, bytesRead } = await opened.read(
        Buffer.alloc(MARK_BYTES),
        0,
        MARK_BYTES,
        from,
      );
      return buffer.subarray(0, bytesRead);
    };
    return isOwn(kind, await part(0), await part(Math.max(0, size - MARK_BYTES)));
  } finally {
    await opened.close();
  }
}
