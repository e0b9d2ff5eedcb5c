/** What renaming and looking for entries answer with. */
import type { LocatedEdit, LocatedPlace } from './located.ts';

export type Renaming =
  | { readonly ok: true; readonly edits: readonly LocatedEdit[] }
  | { readonly ok: false; readonly why: string };

export interface FoundEntry extends LocatedPlace {
  readonly name: string;
  /** What it is: "lens", "shot". */
  readonly noun: string;
}
