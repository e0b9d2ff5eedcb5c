/** All that is found in a file, by the core or by the server itself. A failure is a finding too. */

import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { failed } from '../unread.ts';
import type { Documents } from '../workspace/documents.ts';

export class Checked {
  readonly #core: Core;
  readonly #documents: Documents;
  readonly #log: (message: string) => void;

  constructor(core: Core, documents: Documents, log: (message: string) => void) {
    this.#core = core;
    this.#documents = documents;
    this.#log = log;
  }

  findings(file: FileId): readonly LocatedFinding[] {
    const unread = this.#documents.unread(file);
    if (unread) return [unread];
    try {
      return this.#core.findings(file);
    } catch (cause) {
      this.#log(`${file}: ${cause instanceof Error ? cause.stack : String(cause)}`);
      return [failed(file, cause)];
    }
  }
}
