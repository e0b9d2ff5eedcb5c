/** The input of rules about a whole plan: a short summary of every shot, never the shots. */

import type { BenchReport } from '../figures/bench-report.ts';
import type { Carried, HeldLight, LightWithCare } from '../figures/carried.ts';
import type { DayFigures } from '../figures/day-figures.ts';
import type { DayShot } from '../figures/day-plan.ts';
import type { Disagreement } from '../figures/disagreement.ts';
import type { EditFigures } from '../figures/edit-figures.ts';
import type { Footage } from '../figures/edit-footage.ts';
import type { Need } from '../figures/figure.ts';
import type { FilmHolder } from '../figures/holder.ts';
import type { NeedOf } from '../figures/needs.ts';
import type { TakesOfShot } from '../figures/recording.ts';
import type { Field } from '../plan/field.ts';
import type { Preflight } from '../plan/generated/types.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import type { BetterMode } from './better-mode.ts';
import type { Vital } from './readiness.ts';
import type { Rule } from './rule.ts';

/** A light with an index of its colour rendering, and where that is written. */
export interface Rendering {
  readonly light: string;
  readonly index: 'cri' | 'tlci';
  readonly value: number;
  readonly at: Place;
}

/** A light with its colour temperature behind the gels of a shot, K, and their shift, mired. */
export interface ColouredLight {
  readonly light: string;
  readonly kelvin: number;
  readonly shift: number;
}

/** A shot's checks before shooting, by name. */
export interface ChecksOfShot {
  /** It has subject and rig, and every list of checks can be read. */
  readonly judged: boolean;
  readonly calledFor: readonly string[];
  /** Called for and in no list. None of a shot that is not judged, or that accepts it. */
  readonly missing: readonly string[];
  /** Those that it lacks and accepts to lack. */
  readonly accepted: readonly string[];
  /** Its own checks: where they are or would be, and how many there are. */
  readonly own: { readonly at: Place; readonly count: number };
}

export interface ShotSummary {
  readonly shot: string;
  readonly at: Place;
  /** The missing values that the shot's figures need. */
  readonly needs: readonly NeedOf[];
  readonly whiteBalance: { readonly value: number | 'auto'; readonly at: Place } | null;
  /** Colour temperatures of its lights that are known, K, each once. */
  readonly lightColours: readonly number[];
  /** Each of its lights with its colour as it is in the shot; null: one of them isn't known. */
  readonly lit: readonly ColouredLight[] | null;
  readonly rendering: readonly Rendering[];
  readonly holder: FilmHolder | null;
  /** The rig with its support; null: it has none. */
  readonly carried: Carried | null;
  /** Measurements of the shot and its rig that differ much from the calculation. */
  readonly disagreements: readonly Disagreement[];
  /** Its takes on the rig's body; null: the rig has none. */
  readonly takes: TakesOfShot | null;
  /** What the edit needs of the shot. */
  readonly footage: Footage;
  /** What the day needs of the shot. */
  readonly day: DayShot;
  readonly checks: ChecksOfShot;
  /** What is vital to it and not known. */
  readonly unknown: readonly Vital[];
  /** Lights that need care at their position. */
  readonly care: readonly LightWithCare[];
  /** A better recording mode of its body, and where its own is written; null: none, or accepted. */
  readonly betterMode: { readonly at: Place; readonly facts: BetterMode } | null;
  /** Its lights that stand on or hang from something. */
  readonly heldLights: readonly HeldLight[];
  /** Rules that the plan's own `allow` accepted in this shot. */
  readonly acceptedByPlan: readonly string[];
}

/** An entry with a name, and whether anything in the file refers to it. */
interface NamedEntry {
  readonly id: EntryId;
  readonly name: string;
  readonly noun: string;
  readonly used: boolean;
}

/** One line of the plan's `allow`. */
interface PlanAllowance {
  readonly rule: string;
  readonly at: Place;
}

export interface PlanView {
  /** Values of the plan that would make probable findings of its shots sure, once for each. */
  readonly unsure: readonly Need[];
  readonly file: FileId;
  readonly shots: readonly ShotSummary[];
  /** Each rig once for each different load in the shots. */
  readonly carried: readonly Carried[];
  /** Entries of this file that shots or rigs could refer to. */
  readonly entries: readonly NamedEntry[];
  readonly allow: readonly PlanAllowance[];
  /** The plan's own checks: once a day, and for every shot. */
  readonly preflight: Field<Preflight>;
  /** null: the plan has no cuts. */
  readonly edit: EditFigures | null;
  /** null: the plan has no day that can be read. */
  readonly day: DayFigures | null;
  /** Of the lenses, lights, bodies, converters and close-up lenses of this file that have a bench. */
  readonly benches: readonly BenchReport[];
  /** Rules that the plan's own `allow` accepted about the plan as a whole. */
  readonly accepted: readonly string[];
}

export type PlanRule<F> = Rule<F, PlanView>;
