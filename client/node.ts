/** The extension in a desktop editor and on a remote machine: the server is a process. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, type NodeModule, TransportKind } from 'vscode-languageclient/node';
import { CLIENT_ID, CLIENT_NAME, start } from './extension.ts';
import { SERVER_FLAGS } from './server-flags.ts';

export const activate = async (context: ExtensionContext): Promise<void> => {
  const server: NodeModule = {
    module: context.asAbsolutePath('dist/lamella-language-server.cjs'),
    transport: TransportKind.ipc,
    options: { execArgv: [...SERVER_FLAGS] },
  };
  const client = await start(
    context,
    (options) =>
      new LanguageClient(CLIENT_ID, CLIENT_NAME, { run: server, debug: server }, options),
  );
  context.subscriptions.push(client);
};
