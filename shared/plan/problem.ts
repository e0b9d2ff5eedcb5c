/**
 * What is wrong with an entry's shape or words, as data: the schema check and the lowering say
 * these; rules/ turns them into findings with words.
 */
import type { Fix, Problem } from '../text/problem.ts';
import type { EntryId, Place } from './place.ts';

export type ShapeProblem = Problem<
  | 'unit'
  | 'unknown-key'
  | 'missing-key'
  | 'wrong-value'
  | 'usual-spelling'
  | 'misread-scalar'
  | 'unknown-name'
  | 'duplicate-name'
  | 'use-not-found'
  | 'use-in-a-circle',
  Place,
  PlanFix
>;

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
      readonly section: EntryId;
      readonly name: string;
      readonly text: string;
    };

export type PlanFix = Fix<PlanEdit>;
