/// <reference lib="dom" />
/** The extension in an editor that is only a web page: the server is a worker. */
import { Disposable, type ExtensionContext, Uri, workspace } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { CLIENT_ID, CLIENT_NAME, start } from './extension.ts';

export const activate = async (context: ExtensionContext): Promise<void> => {
  const script = Uri.joinPath(context.extensionUri, 'dist/server.browser.js');
  let worker: Worker | undefined;
  // Reader and writer rather than the worker: an editor's stand-in for Worker, which it hands to
  // extensions, isn't an instance of it, and the client asks.
  const startServer = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(await loadable(script));
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  const client = await start(
    context,
    (options) => new LanguageClient(CLIENT_ID, CLIENT_NAME, startServer, options),
  );
  context.subscriptions.push(client, new Disposable(() => worker?.terminate()));
};

/**
 * An address that a worker can be started from. A page may not start one from another origin,
 * and where the extension itself lies on a remote machine its files have no web address at all.
 */
const loadable = async (script: Uri): Promise<string> => {
  const source = await workspace.fs.readFile(script);
  return URL.createObjectURL(new Blob([new Uint8Array(source)], { type: 'text/javascript' }));
};
