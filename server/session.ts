/** One client's session, from its `initialize` to its `shutdown`: the parts and how they meet. */
import {
  CodeLensRefreshRequest,
  type Connection,
  type InitializeParams,
} from 'vscode-languageserver';
import type { Core, CoreOptions } from '../shared/api/facade.ts';
import type { FileId } from '../shared/plan/place.ts';
import { workAhead } from './ahead.ts';
import { type ClientFeatures, clientFeatures, optionsOf } from './client-features.ts';
import type { DiagnosticsChannel } from './diagnostics/channel.ts';
import { Checked } from './diagnostics/checked.ts';
import { PulledDiagnostics } from './diagnostics/pull.ts';
import { PushedDiagnostics } from './diagnostics/push.ts';
import { DiagnosticMaker } from './diagnostics/to-lsp.ts';
import type { Host } from './host.ts';
import { Settings } from './settings.ts';
import { States } from './state.ts';
import { Upkeep } from './upkeep.ts';
import { Documents } from './workspace/documents.ts';
import { MOST_FILES, PlanFiles } from './workspace/plan-files.ts';
import { Roots } from './workspace/roots.ts';
import { UsedFiles } from './workspace/used-files.ts';

export interface SessionOptions {
  readonly connection: Connection;
  readonly host: Host;
  readonly createCore: (options: CoreOptions) => Core;
}

export class Session {
  readonly client: ClientFeatures;
  readonly core: Core;
  readonly documents: Documents;
  readonly used: UsedFiles;
  readonly roots: Roots;
  readonly settings: Settings;
  readonly diagnostics: DiagnosticMaker;
  /** For what is looked at beside the plans that are open. */
  readonly createCore: SessionOptions['createCore'];
  /** Only where the client asks for findings. */
  readonly pulled: PulledDiagnostics | null;
  readonly #connection: Connection;
  readonly #channel: DiagnosticsChannel;
  readonly #states: States | null;
  readonly #upkeep: Upkeep;
  readonly #planFiles: PlanFiles;

  constructor({ connection, host, createCore }: SessionOptions, params: InitializeParams) {
    this.#connection = connection;
    const client = clientFeatures(params, host);
    this.#planFiles = new PlanFiles(connection, optionsOf(params).listsPlans === true);
    const settings = new Settings(optionsOf(params));
    const roots = new Roots((file) => host.rootOf(file));
    roots.change(foldersOf(params), []);
    const core = createCore({
      rootOf: (file) => roots.of(file),
      otherRoots: (file) => roots.beside(file),
      planFiles: () => this.#planFiles.known,
      get lengths() {
        return settings.lengths;
      },
    });
    const documents = new Documents(core);
    this.client = client;
    this.settings = settings;
    this.createCore = createCore;
    this.roots = roots;
    this.core = core;
    this.documents = documents;
    const arrived = (file: FileId): void => this.changed(file, false);
    this.used = new UsedFiles({ core, host, documents, roots, arrived });

    const checked = new Checked(core, documents, (message) => this.log(message));
    this.diagnostics = new DiagnosticMaker(client, (each) => documents.uri(each));
    const check = (file: FileId) => this.diagnostics.make(checked.findings(file));
    const known = () => this.#known();
    this.pulled = client.pullsDiagnostics
      ? new PulledDiagnostics({ connection, client, documents, check, known })
      : null;
    this.#channel = this.pulled ?? new PushedDiagnostics(connection, documents, check);
    this.#states = client.wantsState ? new States(connection, core, documents) : null;
    this.#upkeep = new Upkeep({
      known,
      ready: (file) => this.used.ready(file),
      ahead: (file, stop) => workAhead(core, file, stop),
      look: (file, typed) => this.#look(file, typed),
      finish: (files, changed) => this.#finish(files, changed),
      failed: (cause) => this.log(cause),
    });
  }

  /** `file` has another text now, is open or closed. `typed`: the client's own doing. */
  changed(file: FileId, typed: boolean): void {
    this.#upkeep.touch(file, typed);
  }

  /** The client's folders may hold other plans now. */
  listPlans(): void {
    void this.#planFiles.ask();
  }

  /** Plans of the client's folders, and what open plans use: as many as are looked at. */
  async allPlans(): Promise<readonly FileId[]> {
    const listed = await this.#planFiles.all();
    return [...new Set([...listed, ...this.#known()])].slice(0, MOST_FILES);
  }

  /** All that is shown may be different now: the settings or the folders changed. */
  changedAll(): void {
    for (const file of this.documents.files) this.changed(file, false);
  }

  closed(file: FileId): void {
    if (!this.documents.close(file)) return;
    this.#states?.closed(file);
    this.used.closed(file);
    this.used.sweep();
    this.changed(file, true);
  }

  /** Resolves when all messages that had arrived are read. */
  settled(): Promise<void> {
    return this.#upkeep.settled();
  }

  /** Between two slices of a long answer: what was just typed goes first. */
  readonly standBack = (): Promise<void> => this.#upkeep.standBack();

  end(): void {
    this.#upkeep.end();
    this.#channel.end();
  }

  log(cause: unknown): void {
    this.#connection.console.error(
      cause instanceof Error ? (cause.stack ?? cause.message) : String(cause),
    );
  }

  /** Shows a warning. */
  tell(words: string): void {
    this.#connection.window.showWarningMessage(words);
  }

  #known(): ReadonlySet<FileId> {
    const { core, documents } = this;
    const reached = documents.files.flatMap((file) => core.reaches(file));
    return new Set([...documents.files, ...reached]);
  }

  #look(file: FileId, typed: boolean): void {
    // Heard only by clients that switched tracing on.
    this.#connection.tracer.log(`Looks at ${file}${typed ? ', typed in' : ''}.`);
    this.#channel.update(file, typed);
    this.#states?.update(file);
  }

  #finish(files: ReadonlySet<FileId>, changed: ReadonlyMap<FileId, boolean>): void {
    const { client, core, documents, used } = this;
    used.sweep();
    this.#channel.finish(files);
    if (client.showsSheets) void this.#connection.sendNotification('lamella/recalculated');
    const elsewhere = [...changed].some(
      ([file, typed]) =>
        !typed ||
        documents.files.some((plan) => plan !== file && core.reaches(plan).includes(file)),
    );
    if (!elsewhere) return;
    const { languages } = this.#connection;
    if (client.refreshesHints) languages.inlayHint.refresh().catch(() => undefined);
    if (client.refreshesTokens) languages.semanticTokens.refresh().catch(() => undefined);
    if (client.refreshesLenses)
      this.#connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
  }
}

/** Workspace folders, or the one folder that older clients name. */
function foldersOf(params: InitializeParams): string[] {
  if (params.workspaceFolders) return params.workspaceFolders.map(({ uri }) => uri);
  return params.rootUri ? [params.rootUri] : [];
}
