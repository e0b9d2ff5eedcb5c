/** What is offered at a caret, as plain data. */
import type { DefName, Group } from '../plan/generated/names.ts';
import type { EntryId } from '../plan/place.ts';
import type { Path } from '../text/tree.ts';
import type { Range } from './located.ts';

/** What an offer stands for; its documentation is made from this when somebody looks at it. */
export type About =
  | { readonly kind: 'key'; readonly of: DefName; readonly key: string }
  | { readonly kind: 'name'; readonly groups: readonly Group[]; readonly name: string }
  | {
      readonly kind: 'value';
      readonly entry: EntryId;
      readonly path: Path;
      readonly text: string;
    }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'check'; readonly name: string }
  | { readonly kind: 'kind'; readonly of: DefName }
  | { readonly kind: 'file'; readonly path: string };

export type CompletionKind = 'key' | 'entry' | 'name' | 'value' | 'word' | 'file' | 'check';

export interface Completion {
  /** What is written, or the key that it begins with. */
  readonly label: string;
  /** A few words: what it is, or what it comes to in this very shot. */
  readonly detail: string;
  readonly kind: CompletionKind;
  /** Place in the list, from 0: what works comes first. */
  readonly order: number;
  /** Its place by its value, for clients that mark the best one; left out: the same. */
  readonly byValue?: number;
  /** What typing is compared with. */
  readonly filter: string;
  readonly preselect: boolean;
  /** Within one line. */
  readonly range: Range;
  readonly text: string;
  /** The same with places to fill in, in the syntax of LSP snippets. */
  readonly snippet?: string;
  /** It ends on a value that there is something to choose for. */
  readonly choice: boolean;
  readonly about: About;
}

export interface Completions {
  readonly items: readonly Completion[];
  /** What is offered depends on what is typed: to be asked for again at every key. */
  readonly incomplete: boolean;
}
