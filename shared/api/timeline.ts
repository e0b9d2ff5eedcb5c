/** The edit as a file for other programs. */
import type { ClipReading } from '../clips/facts.ts';

export const TIMELINE_FORMATS = ['otio', 'fcpxml', 'edl', 'csv'] as const;
export type TimelineFormat = (typeof TIMELINE_FORMATS)[number];

export interface TimelineOptions {
  /** URL of the file that is to be written; left out: beside the plan. */
  readonly target?: string;
  /** Folder of the clips as the editing computer names it, for references that don't depend on the file. */
  readonly media?: string;
  /** What the clips are, and the URLs at which they were found, by the path that the plan writes. */
  readonly readings?: ReadonlyMap<string, ClipReading>;
  readonly found?: ReadonlyMap<string, string>;
  /** "01:00:00:00"; left out: 00:00:00:00. A semicolon before the frames drops frame numbers. */
  readonly startTimecode?: string;
  /** Whether a shot list begins with a byte order mark. */
  readonly bom?: boolean;
}

export type TimelineFile =
  | {
      readonly ok: true;
      readonly text: string;
      /** What the file has otherwise than the plan, or not at all: sentences. */
      readonly notes: readonly string[];
    }
  /** Said as the rest of a sentence: "the edit …". */
  | { readonly ok: false; readonly why: string };
