/** A language server as a child process, over stdio: what a client waits for. */
import { type ChildProcess, spawn } from 'node:child_process';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';

export interface Answered {
  readonly connection: MessageConnection;
  /** Resolves with the next findings sent for the file. */
  nextFindings(): Promise<number>;
  stop(): void;
}

const CAPABILITIES = {
  textDocument: {
    synchronization: {},
    publishDiagnostics: { versionSupport: true, relatedInformation: true },
    hover: { contentFormat: ['markdown'] },
  },
  workspace: { configuration: true },
};

export async function connect(
  command: readonly string[],
  settings: (section: string | undefined) => unknown,
): Promise<Answered> {
  const child: ChildProcess = spawn(command[0]!, command.slice(1), {
    stdio: ['pipe', 'pipe', 'ignore'],
  });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout!),
    new StreamMessageWriter(child.stdin!),
  );
  const waiting: ((count: number) => void)[] = [];
  connection.onNotification(
    'textDocument/publishDiagnostics',
    (params: { diagnostics: unknown[] }) => {
      for (const resolve of waiting.splice(0)) resolve(params.diagnostics.length);
    },
  );
  connection.onRequest('workspace/configuration', ({ items }: { items: { section?: string }[] }) =>
    items.map(({ section }) => settings(section)),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.onUnhandledNotification(() => {});
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: 'file:///w',
    capabilities: CAPABILITIES,
  });
  await connection.sendNotification('initialized', {});
  return {
    connection,
    nextFindings: () => new Promise((resolve) => waiting.push(resolve)),
    stop: () => {
      connection.dispose();
      child.kill();
    },
  };
}

export const URI = 'file:///w/plan.shootplan.yaml';

export const open = ({ connection }: Answered, text: string, languageId: string) =>
  connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri: URI, languageId, version: 1, text },
  });

export const change = (
  { connection }: Answered,
  version: number,
  line: number,
  from: number,
  to: number,
  text: string,
) =>
  connection.sendNotification('textDocument/didChange', {
    textDocument: { uri: URI, version },
    contentChanges: [
      { range: { start: { line, character: from }, end: { line, character: to } }, text },
    ],
  });
