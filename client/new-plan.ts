/** A plan to begin with: body, lens and subject are chosen one after the other. */
import { l10n, type TextDocument, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { NewPlanParams, SheetAnswerParams } from '../server/handlers/new-plan.ts';
import { BODIES, LENSES, type Piece, SUBJECT_KINDS } from '../shared/assist/new-plan/kit.ts';
import { type Answers, QUESTIONS, type Sheet } from '../shared/assist/new-plan/questions.ts';
import { LANGUAGE } from './documents.ts';
import { freeName } from './free-name.ts';
import { exists } from './samples.ts';

/** Where the data is a person's own: taken from its sheet instead of from the list. */
const FROM_SHEET = 'data sheet';

const STEPS = [
  { key: 'body', title: () => l10n.t('New plan (1 of 3): camera'), pieces: BODIES },
  { key: 'lens', title: () => l10n.t('New plan (2 of 3): lens'), pieces: LENSES },
  {
    key: 'subject',
    title: () => l10n.t('New plan (3 of 3): subject'),
    pieces: SUBJECT_KINDS,
  },
] as const;

/** Opens an unsaved plan that is filled in and checks cleanly, to be changed piece by piece. */
export const openNewPlan = async (client: BaseLanguageClient): Promise<void> => {
  const chosen: { body: string | Answers; lens: string | Answers; subject: string } = {
    body: '',
    lens: '',
    subject: '',
  };
  for (const { key, title, pieces } of STEPS) {
    const name = await choose(title(), pieces, key !== 'subject');
    if (name === undefined) return;
    if (key === 'subject' || name !== FROM_SHEET) {
      chosen[key] = name;
      continue;
    }
    const answers = await askSheet(client, key);
    if (!answers) return;
    chosen[key] = answers;
  }
  const params = await withLight(client, chosen);
  if (!params) return;
  const content = await client.sendRequest<string | null>('lamella/newPlan', params);
  if (content === null) return;
  await window.showTextDocument(await unsaved(content));
};

/**
 * An unsaved plan with a name: it is a plan by its name, also after a reload, and is saved where it
 * says. Without a folder there is no place to name.
 */
async function unsaved(content: string): Promise<TextDocument> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  if (!folder) return workspace.openTextDocument({ language: LANGUAGE, content });
  const open = new Set(workspace.textDocuments.map(({ uri }) => uri.path));
  const name = await freeName('new-plan', '.shootplan.yaml', async (each) => {
    const uri = Uri.joinPath(folder, each);
    return open.has(uri.path) || exists(uri);
  });
  const uri = Uri.joinPath(folder, name).with({ scheme: 'untitled' });
  const document = await workspace.openTextDocument(uri);
  const edit = new WorkspaceEdit();
  edit.insert(uri, document.positionAt(0), content);
  await workspace.applyEdit(edit);
  return document;
}

/** Who has the sheet of body or lens is asked for that of the light too; undefined: called off. */
async function withLight(
  client: BaseLanguageClient,
  chosen: NewPlanParams,
): Promise<NewPlanParams | undefined> {
  if (typeof chosen.body === 'string' && typeof chosen.lens === 'string') return chosen;
  const light = await askSheet(client, 'light');
  return light && { ...chosen, light };
}

/** What the sheet says, one value after the other; undefined: called off. */
async function askSheet(client: BaseLanguageClient, sheet: Sheet): Promise<Answers | undefined> {
  const answers: Record<string, string> = {};
  for (const question of QUESTIONS[sheet]) {
    const answer = await window.showInputBox({
      title: l10n.t(question.ask),
      prompt: l10n.t("Leave it empty if the data sheet doesn't say."),
      placeHolder: question.example,
      ignoreFocusOut: true,
      validateInput: async (text) => {
        const params: SheetAnswerParams = { sheet, key: question.key, text };
        return (await client.sendRequest<boolean>('lamella/sheetAnswer', params))
          ? undefined
          : l10n.t("This can't be read. Write it like {0}.", question.example);
      },
    });
    if (answer === undefined) return undefined;
    answers[question.key] = answer;
  }
  return answers;
}

const choose = async (
  title: string,
  pieces: readonly Piece[],
  hasSheet: boolean,
): Promise<string | undefined> => {
  const items = pieces.map(({ name, about }) => ({ label: name, description: l10n.t(about) }));
  const own = { label: FROM_SHEET, description: l10n.t('your own, by what its maker says of it') };
  const all = hasSheet ? [...items, own] : items;
  return (await window.showQuickPick(all, { title, matchOnDescription: true }))?.label;
};
