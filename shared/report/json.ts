/**
 * JSON for programs, a contract: within a `version` keys are added, never changed or taken away.
 * Lines and columns count from 1, columns in UTF-16 units; a range ends before its `end`.
 */

import type { Comparison } from '../api/compared.ts';
import { type LocatedFinding, messageOf, type Range } from '../api/located.ts';
import type { DayJson } from '../figures/day-json.ts';
import type { EditJson } from '../figures/edit-json.ts';
import type { ShotFiguresJson } from '../figures/json.ts';
import type { BodyRecordingJson } from '../figures/recording-json.ts';
import type { Severity } from '../rules/rule.ts';
import type { ReportedFile, TextReportFile } from './text.ts';

type JsonReportFile = ReportedFile & Pick<TextReportFile, 'state'>;

const JSON_VERSION = 1;

/** `lamella check --format json` */
export interface CheckReport {
  readonly version: typeof JSON_VERSION;
  /** Every file that was read: those that were named, then those that they use. */
  readonly files: readonly {
    readonly file: string;
    readonly findings: readonly JsonFinding[];
    /** The plan's shots; left out where nothing of the file was read. */
    readonly shots?: {
      /** Without an error or a warning, as the text counts them. */
      readonly clear: number;
      readonly all: number;
    };
  }[];
}

export interface JsonFinding {
  /** Stable; `lamella explain` tells more about it. */
  readonly rule: string;
  readonly severity: Severity;
  /** What, then why with the numbers. For people: no program should compare it. */
  readonly message: string;
  /** The value at fault. */
  readonly range: JsonRange;
  readonly shot?: string;
  /** Names carry their unit: `neededMm`. */
  readonly numbers?: Readonly<Record<string, number>>;
  /** Left out: the finding is sure, whatever the uncertain values are. */
  readonly certainty?: 'probable';
  /** The uncertain value that would settle a probable finding. */
  readonly settledBy?: string;
  /** Places that the finding follows from. */
  readonly related?: readonly {
    readonly file: string;
    readonly range: JsonRange;
    readonly message: string;
  }[];
  /** Ways out, each with what it adds or worsens. */
  readonly fixes?: readonly { readonly title: string; readonly sideEffects?: string }[];
}

interface JsonRange {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

/** `lamella figures --format json` */
export interface FiguresReport {
  readonly version: typeof JSON_VERSION;
  readonly file: string;
  readonly shots: Readonly<Record<string, ShotFiguresJson>>;
  /** What the takes of the plan come to on each body. */
  readonly recording: readonly BodyRecordingJson[];
  /** The edit; null where the plan has no cuts. */
  readonly edit: EditJson | null;
  /** The day; null where the plan has none. */
  readonly day: DayJson | null;
}

export const checkReport = (files: readonly JsonReportFile[]): string => print(checkJson(files));

export function checkJson(files: readonly JsonReportFile[]): CheckReport {
  return {
    version: JSON_VERSION,
    files: files.map(({ name, findings, nameOf, state }) => ({
      file: name,
      findings: findings.map(({ finding, fixes }) => ({
        ...jsonFinding(finding, nameOf),
        ...(fixes.length > 0 && {
          fixes: fixes.map(({ title, sideEffects }) => ({
            title,
            ...(sideEffects && { sideEffects }),
          })),
        }),
      })),
      ...(state && { shots: { clear: state.ready, all: state.shots } }),
    })),
  };
}

export function figuresReport(
  name: string,
  shots: ReadonlyMap<string, ShotFiguresJson>,
  recording: readonly BodyRecordingJson[],
  edit: EditJson | null,
  day: DayJson | null,
): string {
  return print({
    version: JSON_VERSION,
    file: name,
    shots: Object.fromEntries(shots),
    recording,
    edit,
    day,
  } satisfies FiguresReport);
}

export const jsonFinding = (
  finding: LocatedFinding,
  nameOf: (file: string) => string,
): JsonFinding => ({
  rule: finding.rule,
  severity: finding.severity,
  message: messageOf(finding),
  range: fromOne(finding.range),
  ...(finding.shot !== undefined && { shot: finding.shot }),
  ...(finding.numbers && { numbers: finding.numbers }),
  ...(finding.settledBy !== undefined && {
    certainty: 'probable' as const,
    settledBy: finding.settledBy,
  }),
  ...(finding.related.length > 0 && {
    related: finding.related.map(({ file, range, words }) => ({
      file: nameOf(file),
      range: fromOne(range),
      message: words,
    })),
  }),
});

const fromOne = ({ start, end }: Range): JsonRange => ({
  start: { line: start.line + 1, column: start.character + 1 },
  end: { line: end.line + 1, column: end.character + 1 },
});

/** JSON's own escapes cover the C0 controls; here the others that a terminal or reader acts on. */
const ACTIVE = /[\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff]/g;

/** `lamella compare --format json`: `Comparison` as it stands. */
interface CompareReport extends Comparison {
  readonly version: typeof JSON_VERSION;
  readonly before: string;
  readonly after: string;
}

export const compareReport = (before: string, after: string, comparison: Comparison): string =>
  print({ version: JSON_VERSION, before, after, ...comparison } satisfies CompareReport);

/** JSON in which nothing acts, whatever reads it. */
export const print = (report: object): string =>
  `${JSON.stringify(report, null, 2).replace(
    ACTIVE,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )}\n`;
