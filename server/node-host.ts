/** A machine with a disk: files from there, everything else through the client. */
import path from 'node:path';
import type { Connection } from 'vscode-languageserver';
import { folderOf } from './canonical-uri.ts';
import { readPlan } from './files/read-plan.ts';
import { nearestRoot } from './files/root.ts';
import { pathOfUri, uriOfPath } from './files/uri.ts';
import type { Host } from './host.ts';
import { readThroughClient } from './workspace/client-files.ts';

export function nodeHost(connection: Connection): Host {
  const throughClient = readThroughClient(connection);
  return {
    async read(file, root) {
      const [at, rootAt] = [pathOfUri(file), pathOfUri(root)];
      return at === null || rootAt === null ? throughClient(file) : readPlan(at, rootAt);
    },
    rootOf(file) {
      const at = pathOfUri(file);
      return at === null ? folderOf(file) : uriOfPath(nearestRoot(path.dirname(at)));
    },
  };
}
