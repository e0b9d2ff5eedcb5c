/**
 * The translation of what the server says, where the extension has one for the editor's language.
 * The editor itself looks after the extension's own words (`l10n`, package.nls.json).
 */
import { env, type LogOutputChannel, Uri, workspace } from 'vscode';

/** Message to text, as the server takes it; undefined: there is none, so it says all in English. */
export const translationFor = async (extension: Uri, log: LogOutputChannel): Promise<unknown> => {
  if (/^en\b/.test(env.language)) return undefined;
  const file = Uri.joinPath(extension, `client/l10n/messages.${env.language}.json`);
  let bytes: Uint8Array;
  try {
    bytes = await workspace.fs.readFile(file);
  } catch {
    return undefined;
  }
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch (cause) {
    log.warn(`${file.path}: ${cause instanceof Error ? cause.message : String(cause)}`);
    return undefined;
  }
};
