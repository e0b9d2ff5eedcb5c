import { type Disposable, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Request of the server for a file that a plan uses: `{ uri }` → `{ text }` or `{ error }`. */
export const READ_FILE = 'lamella/readFile';

type Answer = { readonly text: string } | { readonly error: string };

/**
 * Reads through the editor's own file system, which also knows folders that are not on a disk,
 * and only inside the workspace. Bytes that are not UTF-8 are an error, not question marks.
 */
const readPlan = async (uri: Uri): Promise<Answer> => {
  if (!workspace.getWorkspaceFolder(uri)) return { error: 'outside-the-workspace' };
  try {
    const bytes = await workspace.fs.readFile(uri);
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (cause) {
    return { error: cause instanceof Error ? cause.message : String(cause) };
  }
};

export const answerFileReads = (client: BaseLanguageClient): Disposable =>
  client.onRequest<Answer, void>(READ_FILE, ({ uri }: { uri: string }) =>
    readPlan(Uri.parse(uri, true)),
  );
