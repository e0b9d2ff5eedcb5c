import { window, workspace } from 'vscode';
import { planTemplate } from '../shared/assist/template.ts';
import { LANGUAGE } from './documents.ts';

/** Opens an unsaved plan that is filled in and checks cleanly, to be changed piece by piece. */
export const openNewPlan = async (): Promise<void> => {
  const document = await workspace.openTextDocument({
    language: LANGUAGE,
    content: planTemplate(),
  });
  await window.showTextDocument(document);
};
