/** Reads clips one after another; none keeps the others waiting for ever. */
import { Worker } from 'node:worker_threads';
import type { ClipReading } from '../../shared/clips/facts.ts';
import { later, message } from '../../shared/words/message.ts';

export interface ClipReader {
  /** @param file absolute path of a regular file */
  read(file: string, signal: AbortSignal): Promise<ClipReading>;
  close(): Promise<void>;
}

/** Longer than that no header takes to read, on a slow card either. */
const PATIENCE_MS = 60_000;
/** What reading may keep in memory: an index of frames is large, a file made to fill it is larger. */
const MOST_MEGABYTES = 1024;

/**
 * In a thread of its own, loaded at the first clip: one that hangs, runs out of memory or breaks
 * down ends its thread and not the run.
 */
export class WorkerClipReader implements ClipReader {
  readonly #script: string;
  readonly #patienceMs: number;
  #worker: Worker | null = null;

  /** @param script the bundle of `worker.ts` */
  constructor(script: string, patienceMs = PATIENCE_MS) {
    this.#script = script;
    this.#patienceMs = patienceMs;
  }

  read(file: string, signal: AbortSignal): Promise<ClipReading> {
    const worker = this.#started();
    return new Promise<ClipReading>((resolve, reject) => {
      const finish = (end: () => void): void => {
        clearTimeout(timer);
        signal.removeEventListener('abort', stopped);
        worker.off('message', answered).off('error', broke).off('exit', broke);
        end();
      };
      const giveUp = (why: string): void =>
        finish(() => {
          this.#drop(worker);
          resolve({ state: 'unreadable', why });
        });
      const answered = (reading: ClipReading): void => finish(() => resolve(reading));
      const broke = (): void => giveUp(later`its contents broke the reader`);
      const stopped = (): void =>
        finish(() => {
          this.#drop(worker);
          reject(signal.reason);
        });
      const timer = setTimeout(() => {
        const seconds = Math.round(this.#patienceMs / 1000);
        giveUp(message`it could not be read within ${seconds} s`);
      }, this.#patienceMs);
      signal.addEventListener('abort', stopped);
      worker.on('message', answered).on('error', broke).on('exit', broke);
      if (signal.aborted) stopped();
      else worker.postMessage(file);
    });
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
    this.#worker = null;
  }

  #started(): Worker {
    this.#worker ??= new Worker(this.#script, {
      // What a library prints of its own is no part of a report.
      stdout: true,
      stderr: true,
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES },
    });
    return this.#worker;
  }

  #drop(worker: Worker): void {
    // An error that comes while it ends is no news.
    worker.on('error', () => undefined);
    void worker.terminate();
    this.#worker = null;
  }
}
