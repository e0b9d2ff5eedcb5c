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

/** UTF-16 units that may be read again, field by field, where an entry is broken. */
export const MAX_REREAD_LENGTH = 4 * MAX_ENTRY_LENGTH;
