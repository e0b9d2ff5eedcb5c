/** The plans of the workspace, for the server: by the editor's search, or folder by folder. */
import { type Disposable, FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Request of the server for the plans that lie in the workspace: their URIs. */
const PLAN_FILES = 'lamella/planFiles';
/** As many as are looked at where a file moves. */
const MOST_FILES = 2_000;
const MOST_FOLDERS = 2_000;
/** The search of a browser's folders may never answer. */
const MOST_WAIT_MS = 1_000;

export const answerPlanFiles = (client: BaseLanguageClient): Disposable =>
  client.onRequest<string[], void>(PLAN_FILES, async () => {
    const found = (await inTime(searched())) ?? (await walked());
    return found.map((uri) => uri.toString());
  });

const searched = (): Thenable<Uri[]> =>
  workspace.findFiles('**/*.shootplan.yaml', undefined, MOST_FILES);

/** undefined: not in time. */
const inTime = async <T>(work: Thenable<T>): Promise<T | undefined> => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), MOST_WAIT_MS);
  });
  try {
    return await Promise.race([work, late]);
  } catch {
    return undefined;
  } finally {
    clearTimeout(timer);
  }
};

/** Without `node_modules`, folders whose name starts with a dot, and what links lead to. */
const walked = async (): Promise<Uri[]> => {
  const found: Uri[] = [];
  const waiting = (workspace.workspaceFolders ?? []).map(({ uri }) => uri);
  for (let folders = 0; folders < MOST_FOLDERS && found.length < MOST_FILES; folders++) {
    const at = waiting.shift();
    if (!at) break;
    const entries = await workspace.fs.readDirectory(at).then(
      (list) => list,
      () => [],
    );
    for (const [name, type] of entries) {
      if (type === FileType.File && name.endsWith('.shootplan.yaml'))
        found.push(Uri.joinPath(at, name));
      else if (type === FileType.Directory && name !== 'node_modules' && !name.startsWith('.'))
        waiting.push(Uri.joinPath(at, name));
    }
  }
  return found.slice(0, MOST_FILES);
};
