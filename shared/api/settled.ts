/** What "settle this shot" answers with: plain data. */
import type { LocatedEdit } from './located.ts';

export interface SettledFinding {
  readonly rule: string;
  readonly what: string;
}

export interface SettledChange {
  /** In the plan's words: `aperture`, `relight.panel.at.distance`. */
  readonly setting: string;
  readonly from: string;
  readonly to: string;
  /** What comes back where this alone stays as it is. */
  readonly because: readonly SettledFinding[];
}

/** One of the demands that exclude each other: what is left of it at best, and how the shot is set then. */
export interface SettledDemand extends SettledFinding {
  readonly at: string;
}

/** Something outside the settings that would make a way. */
export interface SettledOpening {
  readonly what: string;
  readonly at: string;
}

export interface SettledShot {
  readonly shot: string;
  /** Figures that a setting is judged by and that are not known, and why: nothing was held to them. */
  readonly notKnown: Readonly<Record<string, string>>;
  /** Nothing to settle, settled by `changes`, or no way: `demands` exclude each other. */
  readonly outcome: 'clear' | 'settled' | 'no-way';
  readonly changes: readonly SettledChange[];
  /** Errors and warnings that go. */
  readonly clears: readonly SettledFinding[];
  /** What is worth knowing about the shot as it is set then. */
  readonly leaves: readonly SettledFinding[];
  /** Errors and warnings that no setting has to do with: they stay. */
  readonly others: readonly SettledFinding[];
  readonly demands: readonly SettledDemand[];
  readonly openings: readonly SettledOpening[];
  readonly edits: readonly LocatedEdit[];
}
