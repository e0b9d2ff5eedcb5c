/** The text of a filled-in sheet for the plan in the editor: shown as a diff, applied on a word. */
import { env, l10n, type Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { BringBackAnswer } from '../server/handlers/bring-back.ts';
import { LANGUAGE } from './documents.ts';
import type { Pages } from './pages.ts';

/** No day is larger; the server says so of what is near it. Bytes. */
const MOST_BYTES = 3_000_000;

export const bringBack = async (client: BaseLanguageClient, pages: Pages): Promise<void> => {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
    return;
  }
  const day = await chosenDay();
  if (day === undefined) return;
  const uri = client.code2ProtocolConverter.asUri(document.uri);
  const ask = (propose: boolean) =>
    client.sendRequest<BringBackAnswer | null>('lamella/bringBack', {
      textDocument: { uri },
      day,
      propose,
    });
  let answer = await ask(false);
  if (answer && 'couldPropose' in answer) {
    const isProposed = await alsoProposed();
    if (isProposed === undefined) return;
    if (isProposed) answer = await ask(true);
  }
  if (!answer) return;
  if ('refused' in answer) {
    void window.showWarningMessage(answer.refused);
    return;
  }
  await pages.show(document.uri, l10n.t('and the day'), answer.markdown);
  if (!answer.edit) {
    void window.showInformationMessage(l10n.t('The day changes nothing in the plan.'));
    return;
  }
  const apply = l10n.t('Apply');
  const chosen = await window.showInformationMessage(
    l10n.t('Bring the day into the plan? The page shows all changes.'),
    apply,
  );
  if (chosen !== apply) return;
  const edit = await client.protocol2CodeConverter.asWorkspaceEdit(answer.edit);
  if (!(await workspace.applyEdit(edit)))
    void window.showWarningMessage(
      l10n.t('The plan was changed meanwhile. Bring the day back again.'),
    );
};

/** undefined: the day is not brought back. */
const alsoProposed = async (): Promise<boolean | undefined> => {
  const proposals = { label: l10n.t('What the day shows of body and subjects'), picked: false };
  const picked = await window.showQuickPick([proposals], {
    title: l10n.t('Also propose:'),
    canPickMany: true,
  });
  return picked && picked.length > 0;
};

/** undefined: nothing was chosen, or it can't be read, which has been said. */
const chosenDay = async (): Promise<string | undefined> => {
  const clipboard = l10n.t('From the clipboard');
  const file = l10n.t('From a file…');
  const from = await window.showQuickPick([clipboard, file], {
    title: l10n.t('Where is the text of the sheet or the review?'),
  });
  if (from === clipboard) return env.clipboard.readText();
  if (from !== file) return undefined;
  const [picked] =
    (await window.showOpenDialog({ openLabel: l10n.t('Bring Back'), canSelectMany: false })) ?? [];
  return picked && textOf(picked);
};

const textOf = async (uri: Uri): Promise<string | undefined> => {
  try {
    const { size } = await workspace.fs.stat(uri);
    if (size <= MOST_BYTES)
      return new TextDecoder('utf-8', { fatal: true }).decode(await workspace.fs.readFile(uri));
  } catch {
    // Said below, as for a file that is too large.
  }
  void window.showWarningMessage(l10n.t('The file is too large, or it is not text.'));
  return undefined;
};
