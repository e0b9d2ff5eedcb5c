/** A report of the active plan for a bug, without what is its author's own, on the clipboard. */
import { type ExtensionContext, env, l10n, UIKind, version, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGE } from './documents.ts';

export const copyReport = async (
  { extension }: ExtensionContext,
  client: BaseLanguageClient,
): Promise<void> => {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
    return;
  }
  const facts = [
    `Lamella ${extension.packageJSON.version}, extension`,
    `${env.appName} ${version}, ${env.uiKind === UIKind.Desktop ? 'desktop' : 'web'}${env.remoteName ? ', remote' : ''}`,
  ];
  const uri = client.code2ProtocolConverter.asUri(document.uri);
  const report = await client.sendRequest<string | null>('lamella/report', {
    textDocument: { uri },
    facts,
  });
  if (report === null) return;
  await env.clipboard.writeText(report);
  void window.showInformationMessage(
    l10n.t(
      'Report copied to the clipboard. Names, text, comments and paths are replaced, numbers are not. Read it before you send it.',
    ),
  );
};
