/**
 * The first check of a large plan, in slices short enough that a keystroke or a question between
 * them doesn't wait: after each, all that has arrived is read.
 */

import type { Core } from '../shared/api/facade.ts';
import type { FileId } from '../shared/plan/place.ts';
import { nextTurn } from './turn.ts';

/** Longest slice, ms; a turn of the loop is to stay under 50. */
const SLICE_MS = 25;

/** Works ahead on `file` until nothing is left or `stop` says so; true: nothing is left. */
export async function workAhead(core: Core, file: FileId, stop: () => boolean): Promise<boolean> {
  for (;;) {
    const end = performance.now() + SLICE_MS;
    if (core.prepare(file, () => performance.now() > end)) return true;
    await nextTurn();
    if (stop()) return false;
  }
}
