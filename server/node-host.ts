/** A machine with a disk: files from there, everything else through the client. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Connection } from 'vscode-languageserver';
import { folderOf } from './canonical-uri.ts';
import { isFolder } from './files/is-folder.ts';
import { readPlan } from './files/read-plan.ts';
import { nearestRoot } from './files/root.ts';
import { pathOfUri, uriOfPath } from './files/uri.ts';
import type { Host } from './host.ts';
import { ffmpegLooker } from './looking/looker.ts';
import { checkClips } from './media/check-clips.ts';
import { WorkerClipReader } from './media/clip-reader.ts';
import { editClips } from './media/edit-clips.ts';
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
    async checkClips(core, plan, root, look, signal, progress) {
      const [at, rootAt] = [pathOfUri(plan), pathOfUri(root)];
      if (at === null || rootAt === null) return null;
      const reader = new WorkerClipReader(mediaReader);
      const folders = { plan: path.dirname(at), root: rootAt, media: null };
      try {
        const looker = look ? await ffmpegLooker(process.env) : null;
        const options = { core, plan, folders, reader, looker, signal, progress };
        const checked = await checkClips(options);
        const notAsked = checked.notAsked.map((file) => path.relative(folders.plan, file));
        const looking = !look ? 'not-asked' : looker === null ? 'no-ffmpeg' : 'done';
        return { ...checked, notAsked, looking };
      } finally {
        await reader.close();
      }
    },
    async editClips(core, plan, { root, media }, signal) {
      const [at, rootAt] = [pathOfUri(plan), pathOfUri(root)];
      if (at === null || rootAt === null) return null;
      const isHere = path.isAbsolute(media) && (await isFolder(media));
      const folders = { plan: path.dirname(at), root: rootAt, media: isHere ? media : null };
      const createReader = () => new WorkerClipReader(mediaReader);
      return editClips({ core, plan, folders, createReader, signal });
    },
    rootOf(file) {
      const at = pathOfUri(file);
      return at === null ? folderOf(file) : uriOfPath(nearestRoot(path.dirname(at)));
    },
  };
}
