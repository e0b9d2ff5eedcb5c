/** "Solve this shot": what would be changed and why is shown first, and applied on a word. */
import { l10n, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { SolveAnswer } from '../server/handlers/solve.ts';
import { LANGUAGE } from './documents.ts';

export interface ShotToSolve {
  /** As the server writes it. */
  readonly uri: string;
  readonly shot: string;
}

/** @param shot left out: the one at the cursor */
export const solveShot = async (client: BaseLanguageClient, shot?: ShotToSolve): Promise<void> => {
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
  const detail = answer.lines.join('\n');
  const apply = l10n.t('Apply');
  const choices = answer.edit ? [apply] : [];
  const chosen = await window.showInformationMessage(
    answer.title,
    { modal: true, detail },
    ...choices,
  );
  if (chosen !== apply || !answer.edit) return;
  const edit = await client.protocol2CodeConverter.asWorkspaceEdit(answer.edit);
  await workspace.applyEdit(edit);
};

const shotAtCursor = async (client: BaseLanguageClient): Promise<ShotToSolve | undefined> => {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== LANGUAGE) return undefined;
  const uri = client.code2ProtocolConverter.asUri(editor.document.uri);
  const shot = await client.sendRequest<string | null>('lamella/shotAt', {
    textDocument: { uri },
    position: editor.selection.active,
  });
  return shot === null ? undefined : { uri, shot };
};
