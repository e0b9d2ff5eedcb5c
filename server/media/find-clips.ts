/** Where clips lie: inside the plan's root or the folder of the media, links followed. */
import type { Dirent } from 'node:fs';
import { open, readdir, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { ClipReading } from '../../shared/clips/facts.ts';
import { message } from '../../shared/words/message.ts';
import { isInside, reasonOf } from '../files/read-plan.ts';

export interface ClipFolders {
  /** Absolute: the folder of the plan. */
  readonly plan: string;
  /** Absolute: clips of the plan have to lie in it, or in `media`. */
  readonly root: string;
  /** Absolute; null: none was named. */
  readonly media: string | null;
}

type FoundClip =
  | { readonly ok: true; readonly file: string }
  | { readonly ok: false; readonly reading: ClipReading };

/** @param written the path as the plan has it */
export async function findClip(written: string, folders: ClipFolders): Promise<FoundClip> {
  const { plan, root, media } = folders;
  const bases = media === null ? [plan] : [plan, media];
  let reading: ClipReading = { state: 'not-found' };
  for (const base of bases) {
    const found = await regularFile(path.resolve(base, written), media ? [root, media] : [root]);
    if (found.ok) return found;
    // That it is not there is the least that there is to say.
    if (found.reading.state !== 'not-found') reading = found.reading;
  }
  return { ok: false, reading };
}

async function regularFile(file: string, roots: readonly string[]): Promise<FoundClip> {
  const unreadable = (why: string): FoundClip => ({
    ok: false,
    reading: { state: 'unreadable', why, fault: 'refused' },
  });
  try {
    const [real, ...realRoots] = await Promise.all([file, ...roots].map((one) => realpath(one)));
    if (!realRoots.some((one) => isInside(one, real!)))
      return unreadable(message`it lies outside ${roots.join(message` and `)}`);
    // Anything but a file, a pipe for one, might never come to an end.
    return (await stat(real!)).isFile()
      ? { ok: true, file: real! }
      : unreadable(message`it is not a regular file`);
  } catch (cause) {
    const { why, detail } = reasonOf(cause);
    return why === 'not-found'
      ? { ok: false, reading: { state: 'not-found' } }
      : unreadable(detail);
  }
}

const CLIP = /\.(?:mp4|m4v|mov|mkv|webm|avi|mxf|mts|m2ts|m2t|ts)$/i;
/** Files of another kind have that ending too; a transport stream begins every packet with this. */
const SYNC_BYTE = 0x47;

/** More files than that nobody looks through for clips that were left over. */
const MOST_FILES = 20_000;
const DEEPEST = 8;

/** Real paths of the clips in a folder and below it, by name; links are not followed. */
export async function clipsUnder(folder: string, deepest = DEEPEST): Promise<readonly string[]> {
  const found: string[] = [];
  let seen = 0;
  const walk = async (at: string, depth: number): Promise<void> => {
    const entries = await readdir(at, { withFileTypes: true }).catch((): Dirent[] => []);
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (++seen > MOST_FILES) return;
      const inside = path.join(at, entry.name);
      if (entry.isDirectory() && depth > 0 && !entry.name.startsWith('.'))
        await walk(inside, depth - 1);
      else if (entry.isFile() && CLIP.test(entry.name) && (await isStream(inside)))
        found.push(inside);
    }
  };
  await walk(await realpath(folder).catch(() => folder), deepest);
  return found;
}

/** True of every file but one that only ends like a transport stream. */
async function isStream(file: string): Promise<boolean> {
  if (!/\.ts$/i.test(file)) return true;
  try {
    const handle = await open(file, 'r');
    try {
      const { buffer, bytesRead } = await handle.read(new Uint8Array(1), 0, 1, 0);
      return bytesRead === 1 && buffer[0] === SYNC_BYTE;
    } finally {
      await handle.close();
    }
  } catch {
    return false;
  }
}
