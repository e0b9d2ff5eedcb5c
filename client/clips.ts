/** The clips of the active plan against what it asks: findings on their lines, and a page. */
import {
  CancellationError,
  type CancellationToken,
  type Disposable,
  l10n,
  languages,
  type Progress,
  ProgressLocation,
  window,
  workspace,
} from 'vscode';
import { type BaseLanguageClient, WorkDoneProgress } from 'vscode-languageclient';
import type { ClipsInEditor, ClipsParams } from '../server/handlers/clips.ts';
import { LANGUAGE } from './documents.ts';
import type { Pages } from './pages.ts';

/** Findings of the last time, until the plan is edited: then they may stand on other lines. */
export class ClipFindings implements Disposable {
  readonly #found = languages.createDiagnosticCollection('lamella-clips');
  readonly #listening = [
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (contentChanges.length > 0) this.#found.delete(document.uri);
    }),
    workspace.onDidCloseTextDocument(({ uri }) => this.#found.delete(uri)),
  ];

  /** @param look whether to look at their pictures too, which only a trusted folder's are */
  async check(client: BaseLanguageClient, pages: Pages, look = false): Promise<void> {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== LANGUAGE) {
      void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
      return;
    }
    const uri = client.code2ProtocolConverter.asUri(document.uri);
    const { version } = document;
    const answer = await window.withProgress(
      {
        location: ProgressLocation.Notification,
        title: l10n.t('Reading clips'),
        cancellable: true,
      },
      (progress, token) => asked(client, uri, look && workspace.isTrusted, progress, token),
    );
    if (!answer) return;
    if ('unavailable' in answer) {
      void window.showInformationMessage(answer.unavailable);
      return;
    }
    const found = await client.protocol2CodeConverter.asDiagnostics([...answer.diagnostics]);
    if (document.version === version) this.#found.set(document.uri, found);
    await pages.show(document.uri, l10n.t('and its clips'), answer.markdown);
  }

  dispose(): void {
    this.#found.dispose();
    for (const one of this.#listening) one.dispose();
  }
}

/** Tells requests apart whose progress is told. */
let requests = 0;

/** null: there is no answer, or it was not waited for. */
const asked = async (
  client: BaseLanguageClient,
  uri: string,
  look: boolean,
  progress: Progress<{ message?: string }>,
  token: CancellationToken,
): Promise<ClipsInEditor | null> => {
  const workDoneToken = `lamella-clips-${++requests}`;
  const told = client.onProgress(WorkDoneProgress.type, workDoneToken, (value) => {
    if (value.kind === 'report' && value.message) progress.report({ message: value.message });
  });
  try {
    const params: ClipsParams = { textDocument: { uri }, workDoneToken, look };
    return await client.sendRequest<ClipsInEditor | null>('lamella/clips', params, token);
  } catch (cause) {
    if (cause instanceof CancellationError) return null;
    throw cause;
  } finally {
    told.dispose();
  }
};
