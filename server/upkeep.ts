/**
 * What follows a change: findings, states and refreshes, one file a turn of the event loop, the
 * text being typed in first. A further change drops what is left and starts over.
 *
 * There is no delay but the turns themselves: before anything is worked out, all messages that
 * have arrived are read, so a burst of edits is followed by one piece of work.
 */
import type { FileId } from '../shared/plan/place.ts';
import { nextTurn } from './turn.ts';

/** Most turns that work is put off while edits keep arriving. */
const MOST_PUT_OFF = 50;

/** Turns that a long answer stands back after a change: by then an edit has its findings. */
const MOST_STOOD_BACK = 12;

interface UpkeepOptions {
  /** Files to look at after a change. */
  readonly known: () => ReadonlySet<FileId>;
  /** Resolves when the files that `file` uses are there. */
  readonly ready: (file: FileId) => Promise<void>;
  /** Works ahead on a file; false where `stop` said so before the end. */
  readonly ahead: (file: FileId, stop: () => boolean) => Promise<boolean>;
  readonly look: (file: FileId, typed: boolean) => void;
  /** All were looked at. `changed`: since the last time, and whether it was by the client. */
  readonly finish: (known: ReadonlySet<FileId>, changed: ReadonlyMap<FileId, boolean>) => void;
  readonly failed: (cause: unknown) => void;
}

export class Upkeep {
  readonly #options: UpkeepOptions;
  /** Changed since the last whole round, latest last; true: by the client. */
  readonly #changed = new Map<FileId, boolean>();
  #changes = 0;
  #stoodBack = 0;
  #running = false;
  #ended = false;

  constructor(options: UpkeepOptions) {
    this.#options = options;
  }

  /** `file` has another text now, or is open or closed. */
  touch(file: FileId, typed: boolean): void {
    this.#changes++;
    this.#stoodBack = 0;
    const before = this.#changed.get(file);
    this.#changed.delete(file);
    this.#changed.set(file, typed && before !== false);
    if (!this.#running && !this.#ended) void this.#run();
  }

  /** Resolves when all messages that had arrived are read. */
  async settled(): Promise<void> {
    for (let turns = 0; turns < MOST_PUT_OFF; turns++) {
      const seen = this.#changes;
      // The first turn may be our own place in the queue before a message that is already here.
      await nextTurn();
      await nextTurn();
      if (seen === this.#changes) return;
    }
  }

  /**
   * A turn, and after a change some more while that is followed up: for long answers between two
   * slices. The first check of a long plan doesn't hold them up to its end.
   */
  async standBack(): Promise<void> {
    await nextTurn();
    while (this.#running && this.#stoodBack < MOST_STOOD_BACK) {
      this.#stoodBack++;
      await nextTurn();
    }
  }

  end(): void {
    this.#ended = true;
  }

  async #run(): Promise<void> {
    this.#running = true;
    try {
      while (this.#changed.size > 0 && !this.#ended) await this.#round();
    } catch (cause) {
      this.#changed.clear();
      this.#options.failed(cause);
    } finally {
      this.#running = false;
    }
  }

  async #round(): Promise<void> {
    const { known, ready, ahead, look, finish } = this.#options;
    await this.settled();
    const seen = this.#changes;
    const changed = new Map([...this.#changed].reverse());
    // A stable sort: typed in first, the latest before the others.
    const first = [...changed].sort(([, a], [, b]) => Number(b) - Number(a)).map(([file]) => file);
    await Promise.all(first.map((file) => ready(file)));
    if (seen !== this.#changes) return;
    const files = known();
    for (const file of new Set([...first, ...files])) {
      if (!files.has(file)) continue;
      const stop = () => seen !== this.#changes || this.#ended;
      if (!(await ahead(file, stop))) return;
      look(file, changed.get(file) ?? false);
      await nextTurn();
      if (stop()) return;
    }
    this.#changed.clear();
    finish(files, changed);
  }
}
