/** Long answers in slices, between which all that has arrived is read: typing doesn't wait for them. */
import type { CancellationToken } from 'vscode-languageserver';
import { nextTurn } from './turn.ts';

/** Longest slice, ms: a keystroke between two of them waits no longer. */
const SLICE_MS = 8;

/** What goes on between two slices; it lets a turn of the loop pass at least. */
export type Between = () => Promise<unknown>;

/**
 * @param work goes on until it has its answer, or `until` says so; null: not done yet
 * @returns null: it was cancelled
 */
export async function inSlices<T>(
  work: (until: () => boolean) => T | null,
  token: Pick<CancellationToken, 'isCancellationRequested'>,
  between: Between = nextTurn,
): Promise<T | null> {
  for (;;) {
    const end = performance.now() + SLICE_MS;
    const done = work(() => performance.now() > end);
    if (done !== null) return done;
    await between();
    if (token.isCancellationRequested) return null;
  }
}
