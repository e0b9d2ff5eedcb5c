/** What changed in the plan since its last commit, read through the editor's own source control. */
import { extensions, l10n, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ComparedBefore } from '../server/handlers/compare.ts';
import { LANGUAGE } from './documents.ts';
import type { Pages } from './pages.ts';

/** As much of the built-in extension's interface as is needed. */
interface Repository {
  show(revision: string, path: string): Promise<string>;
}
interface Git {
  getRepository(uri: Uri): Repository | null;
}
interface GitExtension {
  getAPI(version: 1): Git;
}

/** More rounds than this no plan has files that use files. */
const MOST_ROUNDS = 50;

export const compareWithCommit = async (
  client: BaseLanguageClient,
  pages: Pages,
): Promise<void> => {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
    return;
  }
  const repository = await repositoryOf(document.uri);
  if (!repository) {
    void window.showInformationMessage(
      l10n.t(
        'No last commit to compare with. The plan is not in a repository that the editor knows.',
      ),
    );
    return;
  }
  const uri = client.code2ProtocolConverter.asUri(document.uri);
  const before: Record<string, string | null> = {};
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const params = { textDocument: { uri }, before };
    const answer = await client.sendRequest<ComparedBefore | null>('lamella/compare', params);
    if (!answer) return;
    if ('markdown' in answer) {
      await pages.show(document.uri, l10n.t('since its last commit'), answer.markdown);
      return;
    }
    for (const wanted of answer.wanted) before[wanted] = await committed(repository, wanted);
  }
};

const repositoryOf = async (uri: Uri): Promise<Repository | null> => {
  const extension = extensions.getExtension<GitExtension>('vscode.git');
  if (!extension) return null;
  try {
    return (await extension.activate()).getAPI(1).getRepository(uri);
  } catch {
    return null;
  }
};

/** null: it was not there. */
const committed = async (repository: Repository, uri: string): Promise<string | null> => {
  try {
    return await repository.show('HEAD', Uri.parse(uri, true).fsPath);
  } catch {
    return null;
  }
};
