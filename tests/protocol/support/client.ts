/** A language client over streams in memory, with as many or as few abilities as a test gives it. */
import { PassThrough } from 'node:stream';
import { onTestFinished } from 'vitest';
import {
  type ClientCapabilities,
  CodeLensRefreshRequest,
  ConfigurationRequest,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  DiagnosticRefreshRequest,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  DocumentDiagnosticRequest,
  type FullDocumentDiagnosticReport,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  InlayHintRefreshRequest,
  LogMessageNotification,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Registration,
  RegistrationRequest,
  SemanticTokensRefreshRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver/node';
import { folderOf } from '../../../server/canonical-uri.ts';
import { READS_FIRST } from '../../../server/first-message.ts';
import type { Host, HostText } from '../../../server/host.ts';
import { startServer } from '../../../server/server.ts';
import { STATE, type StateParams } from '../../../server/state.ts';
import { readThroughClient } from '../../../server/workspace/client-files.ts';
import type { Core, CoreOptions } from '../../../shared/api/facade.ts';
import { createFakeCore, type FakeCore } from './fake-core.ts';

export const ROOT = 'file:///plans';
export const PLAN = `${ROOT}/a.shootplan.yaml`;
export const KIT = `${ROOT}/kit.shootplan.yaml`;

export const PULLS: ClientCapabilities = {
  textDocument: { diagnostic: {} },
  workspace: { diagnostics: { refreshSupport: true } },
};

export interface TestClientOptions<C extends Core = FakeCore> {
  readonly capabilities?: ClientCapabilities;
  readonly initializationOptions?: unknown;
  readonly locale?: string;
  readonly folders?: readonly string[] | null;
  /** The disk, by address; left out: every file is asked of the client. */
  readonly disk?: Map<string, string>;
  /** How clips are read; left out: they can't be. */
  readonly checkClips?: Host['checkClips'];
  readonly createCore?: (options: CoreOptions) => C;
  /** What the client answers to `lamella/planFiles`. */
  readonly planFiles?: () => readonly string[];
  /** What the client answers to `workspace/configuration`. */
  readonly settings?: { lengths?: unknown; lenses?: unknown; align?: unknown };
}

export interface TestClient<C extends Core = FakeCore> {
  readonly connection: ProtocolConnection;
  readonly core: C;
  readonly coreOptions: CoreOptions;
  readonly result: InitializeResult;
  readonly published: PublishDiagnosticsParams[];
  readonly states: StateParams[];
  readonly logged: string[];
  readonly registered: Registration[];
  readonly refreshed: { diagnostics: number; hints: number; lenses: number; tokens: number };
  open(uri: string, text: string, version?: number): void;
  change(uri: string, version: number, changes: TextDocumentContentChangeEvent[]): void;
  close(uri: string): void;
  pull(uri: string): Promise<Diagnostic[]>;
  /** The findings that were sent last about `uri`. */
  last(uri: string): PublishDiagnosticsParams | undefined;
}

export async function connect<C extends Core = FakeCore>(
  options: TestClientOptions<C> = {},
): Promise<TestClient<C>> {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const server = createConnection(
    new StreamMessageReader(toServer),
    new StreamMessageWriter(toClient),
    READS_FIRST,
  );
  const connection = createProtocolConnection(
    new StreamMessageReader(toClient),
    new StreamMessageWriter(toServer),
    undefined,
  );
  const made: { core?: C; options?: CoreOptions } = {};
  const create = (options.createCore ?? createFakeCore) as (options: CoreOptions) => C;
  const { disk } = options;
  const host: Host = {
    read: disk ? (file) => fromDisk(disk, file) : readThroughClient(server),
    rootOf: folderOf,
    ...(options.checkClips && { checkClips: options.checkClips }),
  };
  startServer({
    connection: server,
    host,
    createCore: (coreOptions) => {
      made.options = coreOptions;
      made.core = create(coreOptions);
      return made.core;
    },
  });
  server.listen();

  const heard = listen(connection, options);
  connection.listen();
  onTestFinished(async () => {
    await connection.sendRequest(ShutdownRequest.type).catch(() => undefined);
    connection.dispose();
    server.dispose();
  });
  const folders = options.folders === undefined ? [ROOT] : options.folders;
  const result = await connection.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    capabilities: options.capabilities ?? {},
    initializationOptions: options.initializationOptions,
    ...(options.locale !== undefined && { locale: options.locale }),
    workspaceFolders: folders?.map((uri) => ({ uri, name: uri })) ?? null,
  });
  await connection.sendNotification(InitializedNotification.type, {});
  const send = <P>(type: { method: string }, params: P): void =>
    void connection.sendNotification(type.method, params);
  return {
    ...heard,
    connection,
    result,
    core: made.core!,
    coreOptions: made.options!,
    open: (uri, text, version = 1) =>
      send(DidOpenTextDocumentNotification.type, {
        textDocument: { uri, languageId: 'shootplan', version, text },
      }),
    change: (uri, version, contentChanges) =>
      send(DidChangeTextDocumentNotification.type, {
        textDocument: { uri, version },
        contentChanges,
      }),
    close: (uri) => send(DidCloseTextDocumentNotification.type, { textDocument: { uri } }),
    pull: async (uri) => {
      const report = await connection.sendRequest(DocumentDiagnosticRequest.type, {
        textDocument: { uri },
      });
      return (report as FullDocumentDiagnosticReport).items;
    },
    last: (uri) => heard.published.filter((params) => params.uri === uri).at(-1),
  };
}

const fromDisk = async (disk: Map<string, string>, file: string): Promise<HostText> => {
  const text = disk.get(file);
  return text === undefined ? { ok: false, why: 'not-found' } : { ok: true, text };
};

function listen(
  connection: ProtocolConnection,
  options: Pick<TestClientOptions, 'settings' | 'planFiles'>,
) {
  const published: PublishDiagnosticsParams[] = [];
  const states: StateParams[] = [];
  const logged: string[] = [];
  const registered: Registration[] = [];
  const refreshed = { diagnostics: 0, hints: 0, lenses: 0, tokens: 0 };
  connection.onNotification(PublishDiagnosticsNotification.type, (each) => {
    published.push(each);
  });
  connection.onNotification(STATE, (each) => {
    states.push(each);
  });
  connection.onNotification(LogMessageNotification.type, ({ message }) => {
    logged.push(message);
  });
  connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
    registered.push(...registrations);
  });
  connection.onRequest(ConfigurationRequest.type, () => [options.settings ?? {}]);
  connection.onRequest('lamella/planFiles', () => options.planFiles?.() ?? []);
  connection.onRequest(DiagnosticRefreshRequest.type, () => {
    refreshed.diagnostics++;
  });
  connection.onRequest(InlayHintRefreshRequest.type, () => {
    refreshed.hints++;
  });
  connection.onRequest(CodeLensRefreshRequest.type, () => {
    refreshed.lenses++;
  });
  connection.onRequest(SemanticTokensRefreshRequest.type, () => {
    refreshed.tokens++;
  });
  return { published, states, logged, registered, refreshed };
}

/** Waits until `holds`; the test's own time-out ends a wait for what never comes. */
export async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 2));
}

/** Long enough for anything that was going to be sent to have arrived. */
export async function quiet(client: Pick<TestClient, 'connection'>): Promise<void> {
  // Requests are answered in order, each after the messages before it and the work they set off.
  for (let times = 0; times < 20; times++)
    await client.connection.sendRequest('textDocument/hover', {
      textDocument: { uri: 'file:///nothing' },
      position: { line: 0, character: 0 },
    });
}

export const at = (line: number, from: number, to = from, lastLine = line) => ({
  start: { line, character: from },
  end: { line: lastLine, character: to },
});
