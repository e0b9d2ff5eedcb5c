/** The edit as a file for other programs. */
export const TIMELINE_FORMATS = ['otio', 'csv'] as const;
export type TimelineFormat = (typeof TIMELINE_FORMATS)[number];

export type TimelineFile =
  | { readonly ok: true; readonly text: string }
  /** Said as the rest of a sentence: "the edit …". */
  | { readonly ok: false; readonly why: string };
