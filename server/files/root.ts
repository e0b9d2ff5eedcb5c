/** The folder that a plan may use others from, where nobody named one. */
import { existsSync } from 'node:fs';
import path from 'node:path';

/** The nearest folder, from `folder` upward, that is a repository's root; else `folder`. */
export function nearestRoot(folder: string): string {
  for (let at = folder; ; at = path.dirname(at)) {
    if (existsSync(path.join(at, '.git'))) return at;
    if (at === path.dirname(at)) return folder;
  }
}
