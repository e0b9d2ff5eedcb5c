/** "Settle this shot": what would be changed and why is shown first, and applied on a word. */
import { window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { SettleAnswer } from '../server/handlers/settle.ts';
import { LANGUAGE } from './documents.ts';

export interface ShotToSettle {
  /** As the server writes it. */
  readonly uri: string;
  readonly shot: string;
}

const APPLY = 'Apply';

/** @param shot left out: the one at the cursor */
export const settleShot = async (
  client: BaseLanguageClient,
  shot?: ShotToSettle,
): Promise<void> => {
  const wanted = shot ?? (await shotAtCursor(client));
  if (!wanted) {
    void window.showInformationMessage('Put the cursor into a shot of a plan first.');
    return;
  }
  const answer = await client.sendRequest<SettleAnswer | null>('lamella/settle', {
    textDocument: { uri: wanted.uri },
    shot: wanted.shot,
  });
  if (answer === null) {
    void window.showInformationMessage(
      `${wanted.shot} can't be read as it stands; mend its text first.`,
    );
    return;
  }
  const detail = answer.lines.join('\n');
  const choices = answer.edit ? [APPLY] : [];
  const chosen = await window.showInformationMessage(
    answer.title,
    { modal: true, detail },
    ...choices,
  );
  if (chosen !== APPLY || !answer.edit) return;
  const edit = await client.protocol2CodeConverter.asWorkspaceEdit(answer.edit);
  await workspace.applyEdit(edit);
};

const shotAtCursor = async (client: BaseLanguageClient): Promise<ShotToSettle | undefined> => {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== LANGUAGE) return undefined;
  const uri = client.code2ProtocolConverter.asUri(editor.document.uri);
  const shot = await client.sendRequest<string | null>('lamella/shotAt', {
    textDocument: { uri },
    position: editor.selection.active,
  });
  return shot === null ? undefined : { uri, shot };
};
