/** Where the user's own ffmpeg is: in the folders of the path, by absolute names alone. */
import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import path from 'node:path';

/** @returns its absolute path; null: it isn't installed */
export async function findFfmpeg(
  environment: Readonly<Record<string, string | undefined>>,
): Promise<string | null> {
  const name = process.platform === 'win32' ? 'ffmpeg.exe' : 'ffmpeg';
  const folders = (environment.PATH ?? environment.Path ?? '').split(path.delimiter);
  for (const folder of folders) {
    // A folder that is named from the current one could be that of the plan, which may be anybody's.
    if (!path.isAbsolute(folder)) continue;
    const file = path.join(folder, name);
    if (await isProgram(file)) return file;
  }
  return null;
}

async function isProgram(file: string): Promise<boolean> {
  try {
    await access(file, constants.X_OK);
    return (await stat(file)).isFile();
  } catch {
    return false;
  }
}
