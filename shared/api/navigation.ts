/** What renaming, links and looking for entries answer with. */
import type { FileId } from '../plan/place.ts';
import type { LocatedEdit, LocatedPlace, Range } from './located.ts';

export type Renaming =
  | { readonly ok: true; readonly edits: readonly LocatedEdit[] }
  | { readonly ok: false; readonly why: string };

export interface FoundEntry extends LocatedPlace {
  readonly name: string;
  /** What it is: "lens", "shot". */
  readonly noun: string;
}

/** A path in a plan, and the file that it leads to. */
export interface FileLink {
  readonly range: Range;
  readonly file: FileId;
}
