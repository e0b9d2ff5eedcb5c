/** What is put forward at a caret, before it is known how it is written. */
import type { About, CompletionKind } from '../../api/completions.ts';

/** A value that may be written, before it is known how. */
export interface Proposal {
  readonly text: string;
  /** As it is written, where that is not the text itself: in its quotes. */
  readonly source?: string;
  readonly detail: string;
  /** The lower, the better it works; of equals the earlier. */
  readonly rank: number;
  readonly kind: CompletionKind;
  readonly about: About;
}
