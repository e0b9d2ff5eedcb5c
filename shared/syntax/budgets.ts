/**
 * How much of a text is read. Beyond a budget one problem says what was not read; nothing that a
 * file can hold makes reading slow or deep. Plans written by hand stay far below.
 */

/** Nested mappings, lists and brackets below an entry's key. A shot nests four deep. */
export const MAX_DEPTH = 32;

/** UTF-16 units of one entry. A shot with every key set has about 1,500. */
export const MAX_ENTRY_LENGTH = 262_144;

/** Problems told of one entry; one more says that there are others. */
export const MAX_PROBLEMS = 20;

/**
 * Brackets, quotes and other marks of YAML that one text given to `yaml` may hold: its time grows
 * with their square (measured: 200,000 take two minutes, 4,000 under 50 ms). Longer entries are
 * given to it field by field.
 */
export const MAX_MARKS = 4000;

/** Marks that `yaml` is given of one entry in all, where it is read field by field. */
export const MAX_REREAD_MARKS = 10 * MAX_MARKS;

/** Counts them. */
export function countMarks(text: string): number {
  let count = 0;
  for (let at = 0; at < text.length; at++) if (marks[text.charCodeAt(at)] === 1) count++;
  return count;
}

const marks = new Uint8Array(128);
for (const mark of '[]{},:"\'&*!|>#\\-?%@`\n') marks[mark.charCodeAt(0)] = 1;
