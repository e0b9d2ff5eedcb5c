/** A plan to begin with: body, lens and subject are chosen one after the other. */
import { l10n, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { NewPlanParams } from '../server/handlers/new-plan.ts';
import { BODIES, LENSES, type Piece, SUBJECT_KINDS } from '../shared/assist/new-plan/kit.ts';
import { LANGUAGE } from './documents.ts';

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
  const chosen: Record<keyof NewPlanParams, string> = { body: '', lens: '', subject: '' };
  for (const { key, title, pieces } of STEPS) {
    const name = await choose(title(), pieces);
    if (name === undefined) return;
    chosen[key] = name;
  }
  const content = await client.sendRequest<string | null>('lamella/newPlan', chosen);
  if (content === null) return;
  const document = await workspace.openTextDocument({ language: LANGUAGE, content });
  await window.showTextDocument(document);
};

const choose = async (title: string, pieces: readonly Piece[]): Promise<string | undefined> => {
  const items = pieces.map(({ name, about }) => ({ label: name, description: l10n.t(about) }));
  return (await window.showQuickPick(items, { title, matchOnDescription: true }))?.label;
};
