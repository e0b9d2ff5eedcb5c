/**
 * What leaves the core: findings and fixes with places made into lines and columns. Positions
 * count lines and UTF-16 units from 0, as editors do; reports for people add one.
 */
import type { FileId } from '../plan/place.ts';
import type { Severity } from '../rules/rule.ts';
import type { Fix } from '../text/problem.ts';

export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** The colour that stands beside a value. */
export interface ColourSwatch {
  readonly range: Range;
  /** sRGB, 0 to 1. */
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

export type LocatedFix = Fix<LocatedEdit>;

export interface LocatedPlace {
  readonly file: FileId;
  readonly range: Range;
}

export interface LocatedEdit extends LocatedPlace {
  readonly text: string;
}

export interface LocatedRelated extends LocatedPlace {
  readonly words: string;
}

export interface LocatedFinding extends LocatedPlace {
  readonly rule: string;
  readonly severity: Severity;
  /** First sentence: what. */
  readonly what: string;
  /** Why, with the numbers; may be empty. */
  readonly why: string;
  readonly shot?: string;
  readonly numbers?: Readonly<Record<string, number>>;
  /** It is only probable: the uncertain input that would settle it. Absent: it is sure. */
  readonly settledBy?: string;
  readonly related: readonly LocatedRelated[];
}

/** What and why as one message. */
export const messageOf = (finding: LocatedFinding): string =>
  finding.why ? `${finding.what} ${finding.why}` : finding.what;
