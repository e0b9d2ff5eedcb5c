/** What the server needs of the machine that it runs on. */
import type { FileId } from '../shared/plan/place.ts';
import type { Refusal } from '../shared/workspace/store.ts';

export type HostText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: Refusal };

export interface Host {
  /** Reads a file that a plan uses; it must lie in `root`, links followed. */
  read(file: FileId, root: FileId): Promise<HostText>;
  /** The root of a file that lies in no workspace folder. */
  rootOf(file: FileId): FileId;
}
