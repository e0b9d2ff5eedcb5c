/** For clients that don't ask: findings are sent whenever they differ, with the text's version. */
import type { Connection, Diagnostic } from 'vscode-languageserver';
import { sameData } from '../../shared/engine/equal.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Documents } from '../workspace/documents.ts';
import type { DiagnosticsChannel } from './channel.ts';

interface Sent {
  readonly version: number | null;
  readonly diagnostics: readonly Diagnostic[];
}

export class PushedDiagnostics implements DiagnosticsChannel {
  readonly #connection: Connection;
  readonly #documents: Documents;
  readonly #check: (file: FileId) => Diagnostic[];
  readonly #sent = new Map<FileId, Sent>();

  constructor(connection: Connection, documents: Documents, check: (file: FileId) => Diagnostic[]) {
    this.#connection = connection;
    this.#documents = documents;
    this.#check = check;
  }

  update(file: FileId): void {
    const version = this.#documents.version(file);
    const before = this.#sent.get(file);
    const diagnostics = this.#check(file);
    // A clean file that was never mentioned needs no mention, unless somebody waits for its version.
    if (!before && version === null && diagnostics.length === 0) return;
    if (before?.version === version && sameData(before.diagnostics, diagnostics)) return;
    this.#sent.set(file, { version, diagnostics });
    this.#send(file, diagnostics, version);
  }

  finish(known: ReadonlySet<FileId>): void {
    for (const file of [...this.#sent.keys()]) {
      if (known.has(file)) continue;
      this.#sent.delete(file);
      this.#send(file, [], null);
    }
  }

  end(): void {
    this.#sent.clear();
  }

  #send(file: FileId, diagnostics: Diagnostic[], version: number | null): void {
    void this.#connection.sendDiagnostics({
      uri: this.#documents.uri(file),
      diagnostics,
      ...(version !== null && { version }),
    });
  }
}
