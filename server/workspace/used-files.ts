/**
 * Files that open plans use and that the client hasn't open: read when they are wanted, again
 * when they change, and forgotten when no open plan reaches them any more.
 */

import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Host, HostText } from '../host.ts';
import type { Documents } from './documents.ts';
import type { Roots } from './roots.ts';

/** Longest that an answer waits for the files that a plan uses; then it does without. */
const MOST_WAIT_MS = 1_000;

interface UsedFilesOptions {
  readonly core: Core;
  readonly host: Host;
  readonly documents: Documents;
  readonly roots: Roots;
  /** A file has been read, or found missing, and the core told. */
  readonly arrived: (file: FileId) => void;
}

export class UsedFiles {
  readonly #options: UsedFilesOptions;
  readonly #reading = new Map<FileId, Promise<void>>();
  /** What the core was told last, to leave it alone where a change left the text as it was. */
  readonly #held = new Map<FileId, HostText>();
  /** Changed again while being read. */
  readonly #again = new Set<FileId>();

  constructor(options: UsedFilesOptions) {
    this.#options = options;
  }

  /** Starts reading what `plan` uses. */
  follow(plan: FileId): void {
    const { core, roots } = this.#options;
    for (const file of core.wanted(plan)) {
      if (file === plan || this.#reading.has(file)) continue;
      roots.lend(file, roots.of(plan));
      this.#read(file);
    }
  }

  /** Resolves when all that `plan` uses is there or refused, or has taken too long. */
  async ready(plan: FileId): Promise<void> {
    const late = Date.now() + MOST_WAIT_MS;
    for (;;) {
      this.follow(plan);
      const wanted = new Set(this.#options.core.wanted(plan));
      const waiting = [...this.#reading].filter(([file]) => wanted.has(file));
      const left = late - Date.now();
      if (waiting.length === 0 || left <= 0) return;
      await within(left, Promise.all(waiting.map(([, reading]) => reading)));
    }
  }

  /** The disk says that `file` changed, appeared or went. */
  changed(file: FileId): void {
    if (this.#options.documents.has(file)) return;
    if (this.#reading.has(file)) this.#again.add(file);
    else if (this.#held.has(file)) this.#read(file);
  }

  /** For clients that don't watch files: looks at all of them again. */
  changedPerhaps(): void {
    for (const file of [...this.#held.keys()]) this.changed(file);
  }

  /** The client has `file` open now: what was read is void. */
  opened(file: FileId): void {
    this.#held.delete(file);
  }

  /** The client closed `file`: the disk's text counts where a plan uses it, else none. */
  closed(file: FileId): void {
    if (this.#reached().has(file)) this.#read(file);
    else this.#forget(file);
  }

  /** Forgets what no open plan reaches. */
  sweep(): void {
    if (this.#held.size === 0) return;
    const reached = this.#reached();
    for (const file of [...this.#held.keys()]) if (!reached.has(file)) this.#forget(file);
  }

  #reached(): Set<FileId> {
    const { core, documents } = this.#options;
    return new Set(documents.files.flatMap((plan) => core.reaches(plan)));
  }

  #forget(file: FileId): void {
    this.#held.delete(file);
    this.#options.roots.takeBack(file);
    this.#options.core.close(file);
  }

  #read(file: FileId): void {
    const { host, roots } = this.#options;
    const reading = host
      .read(file, roots.of(file))
      .catch((): HostText => ({ ok: false, why: 'unreadable' }))
      .then((text) => {
        this.#reading.delete(file);
        if (this.#again.delete(file)) this.#read(file);
        else this.#tell(file, text);
      });
    this.#reading.set(file, reading);
  }

  #tell(file: FileId, text: HostText): void {
    const { core, documents, arrived } = this.#options;
    // Opened meanwhile, or no longer used: the answer is stale.
    if (documents.has(file)) return;
    const before = this.#held.get(file);
    if (before && same(before, text)) return;
    if (!this.#reached().has(file)) {
      this.#forget(file);
      return;
    }
    this.#held.set(file, text);
    if (text.ok) core.give(file, text.text);
    else core.refuse(file, text.why);
    arrived(file);
  }
}

const same = (a: HostText, b: HostText): boolean =>
  a.ok ? b.ok && a.text === b.text : !b.ok && a.why === b.why;

const within = async (ms: number, work: Promise<unknown>): Promise<void> => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms);
  });
  await Promise.race([work, late]);
  clearTimeout(timer);
};
