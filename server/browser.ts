/// <reference lib="webworker" />
/** The language server as a worker of a browser: all files come through the client. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
} from 'vscode-languageserver/browser';
import { createCore } from '../shared/core/core.ts';
import { folderOf } from './canonical-uri.ts';
import { READS_FIRST } from './first-message.ts';
import { startServer } from './server.ts';
import { readThroughClient } from './workspace/client-files.ts';

const worker = self as unknown as DedicatedWorkerGlobalScope;
const connection = createConnection(
  new BrowserMessageReader(worker),
  new BrowserMessageWriter(worker),
  READS_FIRST,
);

startServer({
  connection,
  host: { read: readThroughClient(connection), rootOf: folderOf },
  createCore,
});
connection.listen();
