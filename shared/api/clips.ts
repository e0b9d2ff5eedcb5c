/** What dropping files onto the clips of a shot does. */
import type { LocatedEdit } from './located.ts';

export interface DroppedClips {
  readonly edits: readonly LocatedEdit[];
  /** Why some or all of them are left out, as a sentence; left out: none is. */
  readonly why?: string;
}
