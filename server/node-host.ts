/** A machine with a disk: files from there, everything else through the client. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Connection } from 'vscode-languageserver';
import { folderOf } from './canonical-uri.ts';
import { readPlan } from './files/read-plan.ts';
import { nearestRoot } from './files/root.ts';
import { pathOfUri, uriOfPath } from './files/uri.ts';
import type { Host } from './host.ts';
import { checkClips } from './media/check-clips.ts';
import { WorkerClipReader } from './media/clip-reader.ts';
import { readThroughClient } from './workspace/client-files.ts';

/**
 * @param mediaReader the bundle of the thread that reads clips
 * @param rules the page with all rules, where it was installed along
 */
export function nodeHost(connection: Connection, mediaReader: string, rules: string): Host {
  const throughClient = readThroughClient(connection);
  return {
    ...(existsSync(rules) && { rulePage: `${uriOfPath(rules)}#{rule}` }),
    async read(file, root) {
      const [at, rootAt] = [pathOfUri(file), pathOfUri(root)];
      return at === null || rootAt === null ? throughClient(file) : readPlan(at, rootAt);
    },
    async checkClips(core, plan, root, signal, progress) {
      const [at, rootAt] = [pathOfUri(plan), pathOfUri(root)];
      if (at === null || rootAt === null) return null;
      const reader = new WorkerClipReader(mediaReader);
      const folders = { plan: path.dirname(at), root: rootAt, media: null };
      try {
        const checked = await checkClips({ core, plan, folders, reader, signal, progress });
        const notAsked = checked.notAsked.map((file) => path.relative(folders.plan, file));
        return { ...checked, notAsked };
      } finally {
        await reader.close();
      }
    },
    rootOf(file) {
      const at = pathOfUri(file);
      return at === null ? folderOf(file) : uriOfPath(nearestRoot(path.dirname(at)));
    },
  };
}
