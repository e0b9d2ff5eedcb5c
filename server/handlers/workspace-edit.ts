import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { LocatedEdit } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Documents } from '../workspace/documents.ts';

/** Edits for the client, tied to the versions that they were made for where it can check them. */
export function workspaceEdit(
  edits: readonly LocatedEdit[],
  client: ClientFeatures,
  documents: Documents,
): WorkspaceEdit {
  const byFile = new Map<FileId, TextEdit[]>();
  for (const { file, range, text } of edits) {
    const list = byFile.get(file) ?? [];
    list.push({ range, newText: text });
    byFile.set(file, list);
  }
  if (!client.versionedEdits) {
    const changes = [...byFile].map(([file, list]) => [documents.uri(file), list]);
    return { changes: Object.fromEntries(changes) };
  }
  return {
    documentChanges: [...byFile].map(([file, list]) => ({
      textDocument: { uri: documents.uri(file), version: documents.version(file) },
      edits: list,
    })),
  };
}
