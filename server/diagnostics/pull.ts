/**
 * For clients that ask: findings of an open text when they ask for it, those of files that are
 * only used through the question about the workspace, which waits until there is something new.
 */
import {
  type CancellationToken,
  type Connection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  type FullDocumentDiagnosticReport,
  LSPErrorCodes,
  ResponseError,
  type UnchangedDocumentDiagnosticReport,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { sameData } from '../../shared/engine/equal.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri } from '../canonical-uri.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Documents } from '../workspace/documents.ts';
import type { DiagnosticsChannel } from './channel.ts';

type Report = FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport;

interface Latest {
  readonly id: string;
  readonly items: Diagnostic[];
}

/** Of files that no open plan reaches: nothing is said, and it never changes. */
const NOTHING: Latest = { id: 'none', items: [] };

interface PullOptions {
  readonly connection: Connection;
  readonly client: ClientFeatures;
  readonly documents: Documents;
  readonly check: (file: FileId) => Diagnostic[];
  /** Files that something is said of: the open ones and all that they use. */
  readonly known: () => ReadonlySet<FileId>;
}

export class PulledDiagnostics implements DiagnosticsChannel {
  readonly #options: PullOptions;
  readonly #latest = new Map<FileId, Latest>();
  /** What the client was told last about an open text. */
  readonly #told = new Map<FileId, string>();
  readonly #waiting = new Set<() => void>();
  #made = 0;
  #stale = false;
  #ended = false;

  constructor(options: PullOptions) {
    this.#options = options;
  }

  /** Answers the question about one text. */
  document(uri: string, previous: string | undefined): DocumentDiagnosticReport {
    const { client, documents, known } = this.#options;
    const file = canonicalUri(uri);
    const isKnown = known().has(file);
    const latest = isKnown ? this.#check(file) : NOTHING;
    if (documents.has(file)) this.#told.set(file, latest.id);
    const report = reportOf(latest, previous);
    if (!client.relatedDocuments || !documents.has(file)) return report;
    const related = [...known()].filter((each) => !documents.has(each));
    if (related.length === 0) return report;
    const reports = related.map((each) => [documents.uri(each), reportOf(this.#check(each))]);
    return { ...report, relatedDocuments: Object.fromEntries(reports) };
  }

  /** Answers the question about the workspace, as soon as there is something to say. */
  async workspace(
    previous: readonly { uri: string; value: string }[],
    token: CancellationToken,
  ): Promise<WorkspaceDiagnosticReport | ResponseError<never>> {
    const before = new Map(previous.map(({ uri, value }) => [canonicalUri(uri), value]));
    for (;;) {
      const items = this.#news(before);
      if (items.length > 0 || this.#ended) return { items };
      await this.#change(token);
      if (token.isCancellationRequested)
        return new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
    }
  }

  update(file: FileId, typed: boolean): void {
    const { documents } = this.#options;
    // The client asks by itself about what it changed.
    if (typed && documents.has(file)) return;
    const told = this.#told.get(file);
    const { id } = this.#check(file);
    if (documents.has(file) && told !== undefined && told !== id) this.#stale = true;
  }

  finish(known: ReadonlySet<FileId>): void {
    const { client, connection, documents } = this.#options;
    for (const file of [...this.#latest.keys()]) if (!known.has(file)) this.#latest.delete(file);
    for (const file of [...this.#told.keys()]) if (!documents.has(file)) this.#told.delete(file);
    this.#release();
    if (this.#stale && client.refreshesDiagnostics)
      connection.languages.diagnostics.refresh().catch(() => undefined);
    this.#stale = false;
  }

  end(): void {
    this.#ended = true;
    this.#release();
  }

  #check(file: FileId): Latest {
    const items = this.#options.check(file);
    const before = this.#latest.get(file);
    if (before && sameData(before.items, items)) return before;
    const latest = { id: String(++this.#made), items };
    this.#latest.set(file, latest);
    return latest;
  }

  /** Reports on files that aren't open, where the client has other findings of them, or none. */
  #news(before: ReadonlyMap<FileId, string>): WorkspaceDocumentDiagnosticReport[] {
    const { documents, known } = this.#options;
    const now = known();
    const files = new Set([...now, ...before.keys()]);
    return [...files].flatMap((file) => {
      if (documents.has(file)) return [];
      const latest = now.has(file) ? this.#check(file) : NOTHING;
      const told = before.get(file);
      if (told === latest.id || (told === undefined && latest.items.length === 0)) return [];
      return [{ ...fullReport(latest), uri: documents.uri(file), version: null }];
    });
  }

  #change(token: CancellationToken): Promise<void> {
    return new Promise((resolve) => {
      const done = (): void => {
        this.#waiting.delete(done);
        resolve();
      };
      this.#waiting.add(done);
      token.onCancellationRequested(done);
    });
  }

  #release(): void {
    for (const release of [...this.#waiting]) release();
  }
}

const fullReport = ({ id, items }: Latest): FullDocumentDiagnosticReport => ({
  kind: DocumentDiagnosticReportKind.Full,
  resultId: id,
  items,
});

const reportOf = (latest: Latest, previous?: string): Report =>
  previous === latest.id
    ? { kind: DocumentDiagnosticReportKind.Unchanged, resultId: latest.id }
    : fullReport(latest);
