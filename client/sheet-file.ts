/** The sheet as a page of its own: saved where it is wanted, or opened in a browser to be printed. */
import { type ExtensionContext, env, l10n, ProgressLocation, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

const PLAN_SUFFIX = /(?:\.shootplan)?\.ya?ml$/;

export async function saveSheet(
  context: ExtensionContext,
  client: BaseLanguageClient,
  plan: Uri,
): Promise<void> {
  const target = await window.showSaveDialog({
    defaultUri: plan.with({ path: `${plan.path.replace(PLAN_SUFFIX, '')}.html` }),
    filters: { HTML: ['html'] },
    title: l10n.t('Save the Sheet'),
  });
  if (!target) return;
  const page = await pageOf(context, client, plan, false);
  if (page === null) return;
  await workspace.fs.writeFile(target, page);
  const name = workspace.asRelativePath(target);
  void window.showInformationMessage(l10n.t('The sheet was saved to {0}.', name));
}

export async function printSheet(
  context: ExtensionContext,
  client: BaseLanguageClient,
  plan: Uri,
): Promise<void> {
  const folder = context.globalStorageUri;
  // A browser on another machine, or one that the editor runs in, doesn't reach this one's files.
  if (folder.scheme !== 'file' || env.remoteName !== undefined) {
    void window.showInformationMessage(
      l10n.t('Print the sheet from a browser: save it, then open the file there.'),
    );
    await saveSheet(context, client, plan);
    return;
  }
  const page = await pageOf(context, client, plan, true);
  if (page === null) return;
  await workspace.fs.createDirectory(folder);
  const target = Uri.joinPath(folder, 'sheet-to-print.html');
  await workspace.fs.writeFile(target, page);
  if (!(await env.openExternal(target)))
    void window.showWarningMessage(l10n.t('No browser opened {0}.', target.fsPath));
}

/** null: the server has nothing to say of the plan, which has been told. */
async function pageOf(
  context: ExtensionContext,
  client: BaseLanguageClient,
  plan: Uri,
  prints: boolean,
): Promise<Uint8Array | null> {
  const file = Uri.joinPath(context.extensionUri, 'dist/sheet-fill.js');
  const script = new TextDecoder().decode(await workspace.fs.readFile(file));
  const params = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(plan) },
    script,
    prints,
  };
  // The server knows only what is open.
  await workspace.openTextDocument(plan);
  const progress = { location: ProgressLocation.Window, title: l10n.t('Drawing the sheet') };
  const page = await window.withProgress(progress, () =>
    client.sendRequest<string | null>('lamella/sheetPage', params),
  );
  if (page !== null) return new TextEncoder().encode(page);
  void window.showWarningMessage(l10n.t("The sheet of this plan can't be made now."));
  return null;
}
