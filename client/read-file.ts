import { type Disposable, FileSystemError, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Request of the server for a file that a plan uses: `{ uri }` → `{ text }` or `{ error }`. */
const READ_FILE = 'lamella/readFile';

type Refusal = 'not-found' | 'outside-workspace' | 'not-text' | 'unreadable';
type Answer = { readonly text: string } | { readonly error: Refusal };

/**
 * Reads through the editor's own file system, which also knows folders that are not on a disk,
 * and only inside the workspace. Bytes that are not UTF-8 are refused, not made question marks.
 */
const readPlan = async (uri: Uri): Promise<Answer> => {
  if (!workspace.getWorkspaceFolder(uri)) return { error: 'outside-workspace' };
  try {
    return decode(await workspace.fs.readFile(uri));
  } catch (cause) {
    const absent = cause instanceof FileSystemError && cause.code === 'FileNotFound';
    return { error: absent ? 'not-found' : 'unreadable' };
  }
};

const decode = (bytes: Uint8Array): Answer => {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { error: 'not-text' };
  }
};

export const answerFileReads = (client: BaseLanguageClient): Disposable =>
  client.onRequest<Answer, void>(READ_FILE, ({ uri }: { uri: string }) =>
    readPlan(Uri.parse(uri, true)),
  );
