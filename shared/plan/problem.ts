/**
 * What is wrong with an entry's shape or words, as data: the schema check and the lowering say
 * these; rules/ turns them into findings with words.
 */
import type { Place } from './place.ts';

export interface ShapeProblem {
  readonly rule:
    | 'unit'
    | 'unknown-key'
    | 'missing-key'
    | 'wrong-value'
    | 'usual-spelling'
    | 'misread-scalar'
    | 'unknown-name'
    | 'duplicate-name'
    | 'use-not-found'
    | 'use-in-a-circle';
  /** Which wording applies, e.g. 'no-unit', 'not-one-of'. */
  readonly code: string;
  readonly at: Place;
  /** What the wording needs, as text: `key`, `text`, `expected`, `example`, `nearest` … */
  readonly args: Readonly<Record<string, string>>;
  readonly fixes: readonly PlanFix[];
}

/** An edit said in places, so that it survives edits above it; edits.ts makes it text. */
export type PlanEdit =
  /** Replaces the scalar at `at`, or writes the pair where none stands yet. `text` is YAML. */
  | { readonly op: 'set'; readonly at: Place; readonly text: string }
  | { readonly op: 'remove'; readonly at: Place }
  | { readonly op: 'rename-key'; readonly at: Place; readonly text: string }
  /** Adds an entry to a section: `section` 'shots' or 'kit/tubes'; `text` unindented block YAML. */
  | {
      readonly op: 'add-entry';
      readonly file: string;
      readonly section: string;
      readonly name: string;
      readonly text: string;
    };

export interface PlanFix {
  /** Said as an order: "Write 200 mm". */
  readonly title: string;
  /** What applying it adds or worsens; absent: nothing, so `fix all` may take it. */
  readonly sideEffects?: string;
  readonly edits: readonly PlanEdit[];
}
