/**
 * Plans as they stood at a revision, read with the user's own git: no shell, nothing of the
 * working tree, and blobs as they are stored, so that no filter or driver of a repository runs.
 * A blob that is missing in a partial clone is not fetched: the repository's configuration says
 * with which command, and a repository may come from anybody.
 */
import { execFile } from 'node:child_process';
import { devNull } from 'node:os';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { decode, MOST_BYTES } from './decode.ts';
import { isInside, type ReadPlan, sizeIn } from './read-plan.ts';

type Revision =
  | { readonly ok: true; read(file: string, root: string): Promise<ReadPlan> }
  | { readonly ok: false; readonly why: string };

/**
 * @param revision as the user wrote it
 * @param near absolute path of a file in the repository
 */
export async function atRevision(revision: string, near: string): Promise<Revision> {
  const folder = path.dirname(near);
  const prefix = await git(folder, ['rev-parse', '--show-prefix']);
  if (!prefix.ok)
    return {
      ok: false,
      why: prefix.absent
        ? message`git is not installed, or not where programs are looked for`
        : message`${near} is not in a git repository`,
    };
  const spec = `${revision}^{commit}`;
  const commit = await git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', spec]);
  const id = commit.ok ? lineOf(commit.bytes) : '';
  // Anything but an id would be read as an option or a path.
  if (!/^[0-9a-f]{40,64}$/.test(id))
    return { ok: false, why: message`the repository has no revision ${revision}` };
  return {
    ok: true,
    async read(file, root) {
      const inTree = path.posix.normalize(
        lineOf(prefix.bytes) + path.relative(folder, file).split(path.sep).join('/'),
      );
      if (!isInside(root, file) || inTree.startsWith('../'))
        return { ok: false, why: 'outside-workspace', detail: message`outside ${root}` };
      const blob = await git(folder, ['cat-file', 'blob', `${id}:${inTree}`]);
      if (blob.ok) {
        const decoded = decode(blob.bytes);
        if (decoded.ok) return decoded;
        return { ok: false, why: 'not-text', detail: message`not UTF-8`, decoded };
      }
      if (blob.tooLarge)
        return { ok: false, why: 'too-large', detail: message`more than ${sizeIn(MOST_BYTES)}` };
      return { ok: false, why: 'not-found', detail: message`not there at ${revision}` };
    },
  };
}

type Answer =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly absent: boolean; readonly tooLarge: boolean };

/** No transport is allowed, whatever a configuration says, and nobody is asked for a password. */
const CLOSED = {
  GIT_ALLOW_PROTOCOL: '',
  GIT_NO_LAZY_FETCH: '1',
  GIT_OPTIONAL_LOCKS: '0',
  GIT_TERMINAL_PROMPT: '0',
};

/** Programs that a configuration could name and that these calls never need. */
const NO_PROGRAMS = ['-c', 'core.fsmonitor=false', '-c', `core.hooksPath=${devNull}`];

const git = (cwd: string, args: readonly string[]): Promise<Answer> =>
  new Promise((resolve) => {
    const options = {
      cwd,
      encoding: 'buffer',
      maxBuffer: MOST_BYTES + 1,
      windowsHide: true,
      env: { ...process.env, ...CLOSED },
    } as const;
    execFile('git', [...NO_PROGRAMS, ...args], options, (failure, stdout) => {
      if (!failure) resolve({ ok: true, bytes: new Uint8Array(stdout) });
      else
        resolve({
          ok: false,
          absent: failure.code === 'ENOENT',
          tooLarge: failure.code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER',
        });
    });
  });

const lineOf = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8').trimEnd();
