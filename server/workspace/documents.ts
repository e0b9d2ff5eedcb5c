/**
 * The texts that the client has open. They live in the core and nowhere else: edits go straight
 * to it, so an edit costs what it touches and not the length of the text.
 */

import type { Core, Refusal } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri } from '../canonical-uri.ts';
import { lostTrack, tooLarge } from '../unread.ts';

/** Longest text that is read, in UTF-16 units; the same number as the bytes of a file. */
export const MOST_UNITS = 4 * 1024 * 1024;

interface OpenDocument {
  /** As the client writes it. */
  readonly uri: string;
  version: number;
  /** Why the core doesn't have its text. */
  unread?: LocatedFinding;
}

interface Change {
  readonly range?: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
  readonly text: string;
}

export class Documents {
  readonly #core: Core;
  readonly #open = new Map<FileId, OpenDocument>();

  constructor(core: Core) {
    this.#core = core;
  }

  get files(): readonly FileId[] {
    return [...this.#open.keys()];
  }

  /** Whether the client has it open; its text is then the client's to say, not the disk's. */
  has(file: FileId): boolean {
    return this.#open.has(file);
  }

  /** The version that answers about this file are about; null where it isn't open. */
  version(file: FileId): number | null {
    return this.#open.get(file)?.version ?? null;
  }

  uri(file: FileId): string {
    return this.#open.get(file)?.uri ?? file;
  }

  unread(file: FileId): LocatedFinding | undefined {
    return this.#open.get(file)?.unread;
  }

  open(uri: string, version: number, text: string): FileId {
    const file = canonicalUri(uri);
    const document: OpenDocument = { uri, version };
    this.#open.set(file, document);
    this.#attempt(file, document, () => this.#giveWhole(file, document, text));
    return file;
  }

  /** @returns the file, or null where it isn't open */
  change(uri: string, version: number, changes: readonly Change[]): FileId | null {
    const file = canonicalUri(uri);
    const document = this.#open.get(file);
    if (!document) return null;
    document.version = version;
    this.#attempt(file, document, () => {
      for (const { range, text } of changes) {
        if (typeof text !== 'string') throw new TypeError('A change without its text.');
        if (!range) this.#giveWhole(file, document, text);
        else if (!document.unread) {
          if (text.length > MOST_UNITS) this.#refuseLarge(file, document, text.length);
          else this.#core.edit(file, range, text);
        }
      }
    });
    return file;
  }

  /** @returns whether it was open */
  close(file: FileId): boolean {
    return this.#open.delete(file);
  }

  #giveWhole(file: FileId, document: OpenDocument, text: string): void {
    delete document.unread;
    if (text.length > MOST_UNITS) this.#refuseLarge(file, document, text.length);
    else this.#core.give(file, text);
  }

  #refuseLarge(file: FileId, document: OpenDocument, units: number): void {
    const size = (count: number): string => `${(count / 1024 / 1024).toFixed(1)} MB`;
    this.#refuse(file, document, 'too-large', tooLarge(file, size(units), size(MOST_UNITS)));
  }

  /** An edit that failed leaves a text that is no longer the client's: say so, and stop. */
  #attempt(file: FileId, document: OpenDocument, change: () => void): void {
    try {
      change();
    } catch (cause) {
      this.#refuse(file, document, 'unreadable', lostTrack(file, cause));
      throw cause;
    }
  }

  #refuse(file: FileId, document: OpenDocument, why: Refusal, finding: LocatedFinding): void {
    document.unread = finding;
    this.#core.refuse(file, why);
  }
}
