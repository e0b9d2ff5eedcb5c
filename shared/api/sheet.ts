/**
 * The sheet as data: what is set, checked and watched in every shot, in which order, with its
 * drawings. Pages, Markdown and the live view are made of it, so they can't say different things.
 */

import type { Readiness } from '../rules/readiness.ts';
import type { Table } from './document.ts';
import type { Drawing } from './drawing.ts';
import type { LocatedFinding } from './located.ts';

export interface Sheet {
  readonly title: string;
  /** The plan's file, as the reader names it. */
  readonly file: string;
  readonly about: string | null;
  /** "1920 × 1080, 25 fps, 4 min" */
  readonly deliver: string | null;
  /** Checks that are made once, for the day. */
  readonly once: readonly Check[];
  readonly order: Order;
  /** The hours of the day; null: the plan has none. */
  readonly day: DaySheet | null;
  /** What is recorded in all, on how many cards and batteries: a line a body. */
  readonly recording: readonly string[];
  /** What the shots are for; null: the plan has no cuts. */
  readonly edit: EditSheet | null;
  readonly shots: readonly ShotSheet[];
  /** What is found that is of no single shot. */
  readonly findings: readonly SheetFinding[];
  /** Of lenses, in the order that helps most; none where the sheet is only read. */
  readonly measurements: readonly SheetMeasurement[];
}

/** A ruler measurement that would narrow figures of the plan's shots, with room for its numbers. */
export interface SheetMeasurement {
  readonly lens: string;
  /** How to take it. */
  readonly how: string;
  /** What it will give. */
  readonly gives: string;
  /** Numbers to write down, in order. */
  readonly boxes: readonly MeasurementBox[];
  /** For the lens's `bench`, with `?` where the numbers go. */
  readonly row: string;
  /** What the row says without its numbers. */
  readonly given: { readonly with: readonly string[]; readonly ring: string };
}

interface MeasurementBox {
  readonly label: string;
  readonly unit: string | null;
  /** The key of the row that it fills; null: it only helps to calculate another. */
  readonly key: string | null;
}

export interface DaySheet {
  /** "2027-03-02 · back room · 09:00 to 17:30" */
  readonly when: string;
  /** Sentences: how much time is needed, what is left out. */
  readonly remarks: readonly string[];
  readonly drawing: Drawing;
}

export interface EditSheet {
  /** "00:00:12:00, 300 frames, 12 s" */
  readonly total: string;
  /** Their names, a row of the table each. */
  readonly cuts: readonly string[];
  readonly table: Table;
  readonly drawing: Drawing;
}

export interface ShotSheet {
  readonly name: string;
  readonly about: string | null;
  readonly state: ShotState;
  /** What it lacks to be clear, beside what its findings say. */
  readonly lacks: readonly string[];
  /** What to set, readable at arm's length. */
  readonly settings: readonly Setting[];
  /** What can be set otherwise for a take, as the plan writes it, by key of the shot. */
  readonly planned: Readonly<Record<string, string>>;
  /** What an exposure that is found is of; null: it would say nothing. */
  readonly exposureAsked: {
    readonly body: string;
    readonly iso: string;
    /** As a plan writes stops over or under. */
    readonly planned: string;
    readonly lights: readonly string[];
  } | null;
  /** What a lifetime that is counted is of. */
  readonly lifetimeAsked: {
    readonly subject: string;
    /** As the plan writes it; null: it doesn't, or it writes a range. */
    readonly planned: string | null;
  } | null;
  /** What to put up: subject, rig, lights. */
  readonly bench: readonly Setting[];
  readonly checks: readonly Check[];
  /** Takes that are planned, each to be noted as it is made. */
  readonly takes: number;
  /** Seconds of one take; null: unknown. */
  readonly takeS: number | null;
  /** Seconds that the subject lasts at least; null: it lasts, or there is none. */
  readonly lifeS: number | 'unknown' | null;
  /** What goes wrong, and when. */
  readonly limits: readonly string[];
  /** Where rail or ring are set, frame by frame or mark by mark; null: neither is needed. */
  readonly focus: FocusMarks | null;
  /** What was recorded of it: file, verdict, note. */
  readonly clips: readonly string[];
  /** What reviewers say of it. */
  readonly review: readonly Comment[];
  readonly findings: readonly SheetFinding[];
  readonly drawings: readonly Drawing[];
}

/** A comment of a review; null: not written. */
export interface Comment {
  readonly says: string;
  readonly by: string | null;
  /** "2027-03-02" */
  readonly date: string | null;
  readonly answer: string | null;
}

/** A focus stack or the scale of a focus pull. */
export interface FocusMarks {
  readonly title: string;
  readonly words: string;
  readonly table: Table;
}

/** `unread`: its text can't be read as a shot. */
export type ShotState = Readiness['state'] | 'unread';

export interface Setting {
  readonly label: string;
  /** null: nothing is set, or not known where it follows from others. */
  readonly value: string | null;
  readonly follows?: boolean;
  readonly note?: string | undefined;
  /** The key of the shot that it stands under. */
  readonly key: string;
}

export interface Check {
  readonly name: string;
  readonly what: string;
  readonly done: boolean;
  /** "2027-03-02, op" */
  readonly by: string | null;
}

/** What is done to a check by hand. */
export interface Tick {
  /** null: a check of the day. */
  readonly shot: string | null;
  readonly check: string;
  /** Its date, "2027-03-02"; null: it is open again. */
  readonly done: string | null;
  /** Initials; '': nobody is named. */
  readonly by: string;
}

/** What of a live sheet belongs to a place in the plan's text. */
export interface ShownAt {
  /** Also the shot of a cut. */
  readonly shot: string | null;
  /** The key of the shot; null: its name, or no shot. */
  readonly key: string | null;
  readonly cut: string | null;
}

export type SheetFinding = Pick<LocatedFinding, 'rule' | 'severity' | 'what' | 'why'>;

export interface Order {
  readonly steps: readonly Step[];
  /** Time-lapses, with the shots that can be made while each runs. */
  readonly running: readonly { readonly shot: string; readonly beside: readonly string[] }[];
  /** Seconds of takes and settling that are known; what runs beside a time-lapse isn't added. */
  readonly seconds: number;
  /** Shots whose takes don't say how long they are. */
  readonly untimed: number;
  /** Times that rig or light are changed, in this order and in the plan's own. */
  readonly changes: number;
  readonly changesAsWritten: number;
}

interface Step {
  readonly shot: string;
  /** What is put up, taken away or exchanged before it. */
  readonly changes: readonly string[];
  readonly seconds: number | null;
  /** When its takes begin, "09:25"; null: the plan has no day, or the shot isn't in it. */
  readonly begins: string | null;
}
