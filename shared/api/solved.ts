/** What "solve this shot" answers with: plain data. */
import type { LocatedEdit, LocatedFinding } from './located.ts';

export type SolvedFinding = Pick<LocatedFinding, 'rule' | 'what'>;

/** What no setting has to do with, and the fixes that `check` has for it, to be made by hand. */
export interface UnaffectedFinding extends SolvedFinding {
  readonly fixes: readonly { readonly title: string; readonly sideEffects?: string }[];
}

export interface SolvedChange {
  /** In the plan's words: `aperture`, `relight.panel.at.distance`. */
  readonly setting: string;
  readonly from: string;
  readonly to: string;
  /** What comes back where this alone stays as it is. */
  readonly because: readonly SolvedFinding[];
  /** Its part of the shot's edits; each set of changes can be made alone. */
  readonly edits: readonly LocatedEdit[];
}

/** One of the demands that exclude each other: what is left of it at best, and how the shot is set then. */
interface SolvedDemand extends SolvedFinding {
  readonly at: string;
}

/** Something outside the settings that would make a way. */
interface SolvedOpening {
  readonly what: string;
  readonly at: string;
}

export interface SolvedShot {
  readonly shot: string;
  /** Figures that a setting is judged by and that are not known, and why: nothing was held to them. */
  readonly notKnown: Readonly<Record<string, string>>;
  /**
   * Nothing to solve, solved by `changes`, no way: `demands` exclude each other, or none found
   * within the search's limit.
   */
  readonly outcome: 'clear' | 'solved' | 'no-way' | 'not-found';
  /** The search ended at its limit: a smaller change may do, or there is more in the way. */
  readonly cutShort?: true;
  readonly changes: readonly SolvedChange[];
  /** Where the uncertain values matter: it holds wherever they lie, or in their middle. */
  readonly holds?: 'worst-case' | 'middle';
  /** Errors and warnings that go. */
  readonly clears: readonly SolvedFinding[];
  /** What is worth knowing about the shot as it is set then. */
  readonly leaves: readonly SolvedFinding[];
  /** Errors and warnings that no setting has to do with: they stay. */
  readonly others: readonly UnaffectedFinding[];
  readonly demands: readonly SolvedDemand[];
  readonly openings: readonly SolvedOpening[];
  readonly edits: readonly LocatedEdit[];
}
