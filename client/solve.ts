/** "Solve this shot": what would be changed and why is shown first, and what is ticked is applied. */
import { l10n, WorkspaceEdit, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { SolveAnswer } from '../server/handlers/solve.ts';
import { LANGUAGE } from './documents.ts';
import { type SolvePreview, sayChanged } from './solve-preview.ts';

export interface ShotToSolve {
  /** As the server writes it. */
  readonly uri: string;
  readonly shot: string;
}

/** @param shot left out: the one at the cursor */
export const solveShot = async (
  client: BaseLanguageClient,
  preview: SolvePreview,
  shot?: ShotToSolve,
): Promise<void> => {
  const wanted = shot ?? (await shotAtCursor(client));
  if (!wanted) {
    void window.showInformationMessage(l10n.t('Put the cursor into a shot of a plan first.'));
    return;
  }
  const answer = await client.sendRequest<SolveAnswer | null>('lamella/solve', {
    textDocument: { uri: wanted.uri },
    shot: wanted.shot,
  });
  if (answer === null) {
    void window.showInformationMessage(l10n.t('{0} has errors; fix them first.', wanted.shot));
    return;
  }
  if (!answer.changes) {
    const detail = answer.lines.join('\n');
    void window.showInformationMessage(answer.title, { modal: true, detail });
    return;
  }
  const plan = await workspace.openTextDocument(client.protocol2CodeConverter.asUri(wanted.uri));
  const solving = { ...answer, changes: answer.changes };
  const chosen = await preview.choose(client, plan, wanted.shot, solving);
  if (!chosen || chosen.length === 0) return;
  await window.showTextDocument(plan);
  if (plan.version !== answer.version) {
    sayChanged();
    return;
  }
  const edit = new WorkspaceEdit();
  const edits = chosen.flatMap((change) => change.edits);
  edit.set(plan.uri, await client.protocol2CodeConverter.asTextEdits([...edits]));
  await workspace.applyEdit(edit);
};

const shotAtCursor = async (client: BaseLanguageClient): Promise<ShotToSolve | undefined> => {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== LANGUAGE) return undefined;
  const uri = client.code2ProtocolConverter.asUri(editor.document.uri);
  const shot = await client.sendRequest<string | null>('lamella/shotAt', {
    textDocument: { uri },
    // As plain data: the way to a worker leaves nothing of an object of the editor.
    position: client.code2ProtocolConverter.asPosition(editor.selection.active),
  });
  return shot === null ? undefined : { uri, shot };
};
