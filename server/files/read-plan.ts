/** One plan from the disk: only regular files, inside the root, of a size that is worth reading. */
import { readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Refusal } from '../../shared/api/facade.ts';
import { message } from '../../shared/words/message.ts';
import { type Decoded, decode, MOST_BYTES } from './decode.ts';

export type ReadPlan =
  | { readonly ok: true; readonly text: string }
  | {
      readonly ok: false;
      readonly why: Refusal;
      /** Said to people: "no such file", "a link to /elsewhere/x, outside /plans". */
      readonly detail: string;
      /** For 'not-text'. */
      readonly decoded?: Extract<Decoded, { ok: false }>;
    };

/**
 * @param file absolute path
 * @param root absolute path of the folder that the file, links followed, must lie in
 */
export async function readPlan(file: string, root: string): Promise<ReadPlan> {
  try {
    const [real, realRoot] = await Promise.all([realpath(file), realpath(root)]);
    if (!isInside(realRoot, real)) {
      const detail =
        real === file
          ? message`outside ${root}`
          : message`a link to ${real}, which is outside ${root}`;
      return { ok: false, why: 'outside-workspace', detail };
    }
    const { size, isFile } = await statOf(real);
    if (!isFile) return { ok: false, why: 'unreadable', detail: message`not a regular file` };
    if (size > MOST_BYTES) return { ok: false, why: 'too-large', detail: sizeIn(size) };
    const decoded = decode(await readFile(real));
    if (decoded.ok) return decoded;
    return { ok: false, why: 'not-text', detail: message`not UTF-8`, decoded };
  } catch (cause) {
    return { ok: false, ...reasonOf(cause) };
  }
}

const statOf = async (file: string): Promise<{ size: number; isFile: boolean }> => {
  const found = await stat(file);
  return { size: found.size, isFile: found.isFile() };
};

export const sizeIn = (bytes: number): string => `${(bytes / 1024 / 1024).toFixed(1)} MB`;

export function isInside(folder: string, file: string): boolean {
  const way = path.relative(folder, file);
  return way !== '..' && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}

/** What the system said, in words. */
export function reasonOf(cause: unknown): { why: Refusal; detail: string } {
  const code = (cause as NodeJS.ErrnoException | null)?.code;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { why: 'not-found', detail: message`no such file or folder` };
    case 'EACCES':
    case 'EPERM':
      return { why: 'unreadable', detail: message`no permission to read it` };
    case 'ENAMETOOLONG':
      return { why: 'unreadable', detail: message`the path is too long` };
    case 'ERR_INVALID_ARG_VALUE':
      return { why: 'unreadable', detail: message`the path has a NUL character` };
    case 'ELOOP':
      return { why: 'unreadable', detail: message`a link that leads to itself` };
    default:
      return { why: 'unreadable', detail: cause instanceof Error ? cause.message : String(cause) };
  }
}
