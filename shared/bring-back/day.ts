/** A filled-in sheet as data: what was checked, taken and measured on a day. */

/** A check as the plan or the sheet had it before. */
export interface CheckState {
  readonly done: boolean;
  /** ISO 8601, its date at least; null: it is open. */
  readonly at: string | null;
  readonly by: string | null;
}

export interface DayCheck {
  /** null: a check of the day. */
  readonly shot: string | null;
  readonly check: string;
  readonly done: boolean;
  /** ISO 8601, as the sheet wrote it. */
  readonly at: string;
  readonly by: string | null;
  /** What the plan had when the sheet was made, and what the sheet gave since. */
  readonly before: readonly CheckState[];
}

/** Settings of a take, as the language writes them, by the keys of a clip's `set`. */
export type DaySettings = ReadonlyMap<SettingKey, string>;

/** What is filled in of a take. */
export interface TakeValues {
  readonly clip: string | null;
  /** null: not judged. */
  readonly keep: boolean | null;
  readonly note: string | null;
  readonly set: DaySettings;
  /** As the language writes it. */
  readonly used: string | null;
}

export interface DayTake extends TakeValues {
  readonly shot: string;
  /** From 1. */
  readonly take: number;
  /** ISO 8601, as the sheet wrote it. */
  readonly at: string;
  /** How long it ran by the sheet's timer; null: not told. */
  readonly seconds: number | null;
  /** What the sheet gave of it before. */
  readonly before: readonly TakeValues[];
}

type Measured = ReadonlyMap<MeasuredKey, string>;

export interface DayMeasurement {
  readonly lens: string;
  /** Names of the other parts, from the body forward. */
  readonly parts: readonly string[];
  readonly ring: string;
  /** What was measured, as the language writes it, by the keys of a bench row. */
  readonly values: Measured;
  /** What the sheet gave of it before. */
  readonly before: readonly Measured[];
}

/** How bright the picture of a shot was, by histogram or meter. */
export interface DayExposure {
  readonly shot: string;
  readonly at: string;
  /** Against a correct exposure, as the language writes stops over or under. */
  readonly found: string;
  /** What the plan calculated when the sheet was made, in the same way. */
  readonly planned: string;
  readonly body: string;
  /** ISO that was set. */
  readonly iso: string;
  readonly lights: readonly string[];
}

/** How long a subject lasted, counted once. */
export interface DayLifetime {
  readonly shot: string;
  readonly at: string;
  readonly seconds: number;
  readonly subject: string;
  /** Lifetimes that the plan had when the sheet was made. */
  readonly before: readonly string[];
}

export interface Day {
  /** Name of the plan's file. */
  readonly plan: string;
  readonly saved: string;
  /** Settings of shots as the sheet had them, by shot; of shots that it doesn't name, nothing is known. */
  readonly planned: ReadonlyMap<string, DaySettings>;
  readonly checks: readonly DayCheck[];
  readonly takes: readonly DayTake[];
  readonly measurements: readonly DayMeasurement[];
  readonly exposures: readonly DayExposure[];
  readonly lifetimes: readonly DayLifetime[];
  /** Keys that are not known here, each by its place: `takes[2].colour`. */
  readonly unknown: readonly string[];
}

export const SETTING_KINDS = {
  aperture: 'f-number',
  shutter: 'shutter',
  iso: 'iso-or-auto',
  'white-balance': 'white-balance',
  tilt: 'angle',
} as const;
export type SettingKey = keyof typeof SETTING_KINDS;

export const MEASURED_KINDS = {
  field: 'length',
  magnification: 'magnification',
  'from-sensor': 'length',
  'working-distance': 'length',
  'effective-f-number': 'ratio',
  marked: 'f-number',
} as const;
type MeasuredKey = keyof typeof MEASURED_KINDS;
