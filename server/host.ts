/** What the server needs of the machine that it runs on. */

import type { Core, Refusal } from '../shared/api/facade.ts';
import type { FileId } from '../shared/plan/place.ts';
import type { CheckedPlan, CheckOptions } from './media/check-clips.ts';
import type { EditClips } from './media/edit-clips.ts';

export type HostText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: Refusal };

/** Clips that were read, and whether their pictures were looked at. */
type LookedPlan = CheckedPlan & {
  readonly looking: 'not-asked' | 'no-ffmpeg' | 'done';
};

export interface Host {
  /** Reads a file that a plan uses; it must lie in `root`, links followed. */
  read(file: FileId, root: FileId): Promise<HostText>;
  /**
   * Reads the clips of a plan; absent, or null: there is no disk that they could be on.
   *
   * @param root the folder that they have to lie in, links followed
   * @param look whether to look at their pictures too
   */
  checkClips?(
    core: Core,
    plan: FileId,
    root: FileId,
    look: boolean,
    signal: AbortSignal,
    progress: CheckOptions['progress'],
  ): Promise<LookedPlan | null>;
  /**
   * Reads the clips that the edit of a plan uses; absent, or null: there is no disk.
   *
   * @param folders where they may lie, links followed; `media` as the user names it, which may be on
   *   another computer
   */
  editClips?(
    core: Core,
    plan: FileId,
    folders: { readonly root: FileId; readonly media: string },
    signal: AbortSignal,
  ): Promise<EditClips | null>;
  /** The address of a rule's page, with `{rule}` in place of its name; absent: it has none. */
  readonly rulePage?: string;
  /** The root of a file that lies in no workspace folder. */
  rootOf(file: FileId): FileId;
}
