/** The language server over any connection: which message goes to which part of the session. */
import {
  type CancellationToken,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  FileChangeType,
  type InitializeParams,
  type InitializeResult,
  LSPErrorCodes,
  ResponseError,
  type TextDocumentPositionParams,
  WorkDoneProgress,
} from 'vscode-languageserver';
import { version } from '../package.json';
import type { TimelineFile } from '../shared/api/timeline.ts';
import type { FileId } from '../shared/plan/place.ts';
import { workAhead } from './ahead.ts';
import { canonicalUri } from './canonical-uri.ts';
import { optionsOf } from './client-features.ts';
import { actions } from './handlers/actions.ts';
import { type ClipsInEditor, type ClipsParams, clipsInEditor } from './handlers/clips.ts';
import { colours } from './handlers/colours.ts';
import { type ComparedBefore, type CompareParams, compareBefore } from './handlers/compare.ts';
import { completion, resolveCompletion } from './handlers/completion.ts';
import { hints } from './handlers/hints.ts';
import { hover } from './handlers/hover.ts';
import { lenses, resolveLens } from './handlers/lenses.ts';
import {
  definition,
  entries,
  highlights,
  prepareRename,
  references,
  rename,
  selections,
} from './handlers/navigation.ts';
import { type NewPlanParams, newPlanText } from './handlers/new-plan.ts';
import { liveSheet, type PlaceParams, placeInSheet, type SheetParams } from './handlers/sheet.ts';
import { type SolveAnswer, type SolveParams, solveAnswer } from './handlers/solve.ts';
import { symbols } from './handlers/symbols.ts';
import { type TimelineParams, timelineFile } from './handlers/timeline.ts';
import type { CheckOptions } from './media/check-clips.ts';
import { type AboutReport, reportOf } from './report.ts';
import { serverCapabilities } from './server-capabilities.ts';
import { Session, type SessionOptions } from './session.ts';
import type { SentSettings } from './settings.ts';
import { useTranslation } from './translation.ts';

/** Says nothing until `connection.listen()`. */
export function startServer(options: SessionOptions): void {
  const { connection } = options;
  let session: Session | null = null;
  let ended = false;

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    // Before anything is said: what was said once is kept.
    for (const refused of useTranslation(optionsOf(params).translation, params.locale))
      connection.console.warn(refused);
    session = new Session(options, params);
    return {
      capabilities: serverCapabilities(session.client),
      serverInfo: { name: 'Lamella', version },
    };
  });
  connection.onInitialized(() => {
    if (!session) return;
    register(connection, session);
    session.listPlans();
  });
  connection.onShutdown(() => {
    ended = true;
    session?.end();
  });

  const running = (): Session | ResponseError<never> => {
    if (ended) return failure(ErrorCodes.InvalidRequest, 'The server is shut down.');
    return session ?? failure(ErrorCodes.ServerNotInitialized, 'Not initialized yet.');
  };

  /** A request: the text as it stands, unless it was cancelled; a failure is answered as one. */
  const answer =
    <P, R>(work: (session: Session, params: P, token: CancellationToken) => R | Promise<R>) =>
    async (params: P, token: CancellationToken): Promise<R | ResponseError<never>> => {
      const current = running();
      if (current instanceof ResponseError) return current;
      await current.settled();
      if (token.isCancellationRequested)
        return failure(LSPErrorCodes.RequestCancelled, 'cancelled');
      try {
        return await work(current, params, token);
      } catch (cause) {
        current.log(cause);
        const said = cause instanceof Error ? cause.message : String(cause);
        return failure(ErrorCodes.InternalError, said);
      }
    };

  /** A request about an open text whose words the core has; `none` is the answer for others. */
  const about = <P extends { textDocument: { uri: string } }, R>(
    none: R,
    work: (session: Session, file: FileId, params: P) => R,
  ) =>
    answer<P, R>((current, params) => {
      const file = canonicalUri(params.textDocument.uri);
      const { documents } = current;
      return documents.has(file) && !documents.unread(file) ? work(current, file, params) : none;
    });

  /** A notification: there is nobody to answer, so a failure is logged. */
  const heard =
    <P>(work: (session: Session, params: P) => void) =>
    (params: P): void => {
      if (!session || ended) return;
      try {
        work(session, params);
      } catch (cause) {
        session.log(cause);
      }
    };

  connection.onDidOpenTextDocument(
    heard((current, { textDocument: { uri, version: number, text } }) => {
      // Kept, it would stop what is said of all the others.
      if (typeof uri !== 'string' || typeof text !== 'string')
        throw new TypeError('A text was opened without its address or its words: left out.');
      const file = canonicalUri(uri);
      current.used.opened(file);
      try {
        current.documents.open(uri, number, text);
      } finally {
        current.changed(file, true);
      }
      if (!current.client.registersWatchers) current.used.changedPerhaps();
    }),
  );
  connection.onDidChangeTextDocument(
    heard((current, { textDocument: { uri, version: number }, contentChanges }) => {
      const file = canonicalUri(uri);
      if (!current.documents.has(file)) {
        connection.console.warn(`Change of ${uri}, which isn't open: left out.`);
        return;
      }
      try {
        current.documents.change(uri, number, contentChanges);
      } finally {
        current.changed(file, true);
      }
    }),
  );
  connection.onDidCloseTextDocument(
    heard((current, { textDocument: { uri } }) => current.closed(canonicalUri(uri))),
  );
  connection.onDidSaveTextDocument(
    heard((current) => {
      if (!current.client.registersWatchers) current.used.changedPerhaps();
    }),
  );
  connection.onDidChangeWatchedFiles(
    heard((current, { changes }) => {
      for (const { uri } of changes) current.used.changed(canonicalUri(uri));
      if (changes.some(({ type }) => type !== FileChangeType.Changed)) current.listPlans();
    }),
  );
  connection.onDidChangeConfiguration(
    heard((current, { settings }) => {
      if (current.client.answersSettings) askSettings(connection, current);
      else if (current.settings.change(settings?.lamella)) current.changedAll();
    }),
  );

  connection.onCompletion(
    about({ isIncomplete: false, items: [] }, ({ core, client }, file, { position }) =>
      completion(core, client, file, position),
    ),
  );
  connection.onCompletionResolve(
    answer(({ core, client }, item) => resolveCompletion(core, client, item)),
  );
  connection.onHover(
    about(null, ({ core, client }, file, { position }) => hover(core, client, file, position)),
  );
  connection.languages.inlayHint.on(
    about([], ({ core }, file, { range }) => hints(core, file, range)),
  );
  connection.onCodeLens(
    about([], ({ core, settings }, file) => (settings.lenses ? lenses(core, file) : [])),
  );
  connection.onCodeLensResolve(
    answer(({ core, client, documents }, lens) => resolveLens(core, client, documents, lens)),
  );
  connection.onDocumentColor(about([], ({ core }, file) => colours(core, file)));
  // A colour can't be chosen: it follows from the thickness.
  connection.onColorPresentation(() => []);
  connection.onDefinition(
    about(null, ({ core, documents }, file, { position }) =>
      definition(core, documents, file, position),
    ),
  );
  connection.onReferences(
    about([], ({ core, documents }, file, { position, context }) =>
      references(core, documents, file, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(
    about([], ({ core }, file, { position }) => highlights(core, file, position)),
  );
  connection.onPrepareRename(
    about(null, ({ core }, file, { position }) => prepareRename(core, file, position)),
  );
  connection.onRenameRequest(
    about(null, ({ core, client, documents }, file, params) =>
      rename(core, client, documents, file, params),
    ),
  );
  connection.onSelectionRanges(
    about([], ({ core }, file, { positions }) => selections(core, file, positions)),
  );
  connection.onWorkspaceSymbol(
    answer(({ core, documents }, { query }) => entries(core, documents, query)),
  );
  connection.onDocumentSymbol(
    about([], ({ core, client }, file, { textDocument }) =>
      symbols(core, client, file, textDocument.uri),
    ),
  );
  connection.onRequest(
    'lamella/sheet',
    about(null, ({ core, settings }, file, { known }: SheetParams) =>
      liveSheet(core, settings, file, known),
    ),
  );
  connection.onRequest(
    'lamella/placeInSheet',
    about(null, ({ core, documents }, file, params: PlaceParams) =>
      placeInSheet(core, documents, file, params),
    ),
  );
  connection.onRequest(
    'lamella/shotAt',
    about(null, ({ core }, file, { position }: TextDocumentPositionParams) =>
      core.shotAt(file, position),
    ),
  );
  connection.onRequest<ComparedBefore | null, never>(
    'lamella/compare',
    about<CompareParams, ComparedBefore | null>(null, (current, file, { before }) =>
      compareBefore(current, file, before),
    ),
  );
  connection.onRequest<ClipsInEditor | null, never>(
    'lamella/clips',
    answer<ClipsParams, ClipsInEditor | null>(
      async (current, { textDocument: { uri }, workDoneToken }, token) => {
        const file = canonicalUri(uri);
        const { documents } = current;
        if (!documents.has(file) || documents.unread(file)) return null;
        await current.used.ready(file);
        const progress: CheckOptions['progress'] = (done, of, clip) => {
          if (workDoneToken === undefined) return;
          const message = `${done + 1} of ${of}: ${clip}`;
          void connection.sendProgress(WorkDoneProgress.type, workDoneToken, {
            kind: 'report',
            message,
          });
        };
        return clipsInEditor(current, options.host, file, token, progress);
      },
    ),
  );
  connection.onRequest<SolveAnswer | null, never>(
    'lamella/solve',
    about<SolveParams, SolveAnswer | null>(null, ({ core, client, documents }, file, { shot }) =>
      solveAnswer(core, client, documents, file, shot),
    ),
  );
  connection.onRequest<TimelineFile | null, never>(
    'lamella/timeline',
    about<TimelineParams, TimelineFile | null>(null, ({ core }, file, params) =>
      timelineFile(core, file, params),
    ),
  );
  connection.onRequest<string | null, never>(
    'lamella/newPlan',
    answer<NewPlanParams, string | null>(({ createCore }, params) =>
      newPlanText(createCore, params),
    ),
  );
  connection.onRequest(
    'lamella/report',
    about<AboutReport, string | null>(null, (current, file, { facts }) =>
      reportOf(current.core, current.createCore, file, facts),
    ),
  );
  connection.onCodeAction(
    about([], ({ core, client, documents }, file, params) =>
      actions(core, client, documents, file, params),
    ),
  );
  connection.languages.diagnostics.on(
    answer(async ({ core, pulled, used }, { textDocument: { uri }, previousResultId }, token) => {
      if (!pulled) return failure(ErrorCodes.MethodNotFound, 'Findings are sent.');
      const file = canonicalUri(uri);
      await used.ready(file);
      await workAhead(core, file, () => token.isCancellationRequested);
      if (token.isCancellationRequested)
        return failure(LSPErrorCodes.RequestCancelled, 'cancelled');
      return pulled.document(uri, previousResultId);
    }),
  );
  connection.languages.diagnostics.onWorkspace(
    answer(({ pulled }, { previousResultIds }, token) =>
      pulled
        ? pulled.workspace(previousResultIds, token)
        : failure(ErrorCodes.MethodNotFound, 'Findings are sent.'),
    ),
  );
}

/** What the client offers to be asked for beyond the start. */
function register(connection: Connection, session: Session): void {
  const { client } = session;
  const attempt = (work: Promise<unknown>): void =>
    void work.catch((cause: unknown) => session.log(cause));
  if (client.workspaceFolders)
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      session.roots.change(
        added.map(({ uri }) => uri),
        removed.map(({ uri }) => uri),
      );
      session.core.rootsChanged();
      session.changedAll();
    });
  if (client.registersWatchers)
    attempt(
      connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: '**/*.shootplan.yaml' }],
      }),
    );
  if (client.registersSettings)
    attempt(
      connection.client.register(DidChangeConfigurationNotification.type, { section: 'lamella' }),
    );
  if (client.answersSettings) askSettings(connection, session);
}

function askSettings(connection: Connection, session: Session): void {
  connection.workspace.getConfiguration('lamella').then(
    (lamella: SentSettings | null) => {
      if (session.settings.change(lamella)) session.changedAll();
    },
    (cause: unknown) => session.log(cause),
  );
}

const failure = (code: number, said: string): ResponseError<never> => new ResponseError(code, said);
