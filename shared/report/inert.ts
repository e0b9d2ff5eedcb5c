/**
 * What a plan says is data wherever it is shown. Control characters, terminal escapes and marks
 * that turn the direction of text are made visible instead of taking effect.
 */

/** C0 and C1 controls but tab, bidirectional marks and isolates, line separators, the BOM. */
const ACTIVE = /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff]/gu;

/** One line of plain text: every active character as `\u{202e}`; tabs and breaks as spaces. */
export const inertLine = (text: string): string =>
  text.replace(ACTIVE, (character) =>
    character === '\t' || character === '\n' || character === '\r'
      ? ' '
      : `\\u{${character.codePointAt(0)!.toString(16)}}`,
  );

/** Lines of data: nothing in them acts, but their ends, tabs and the BOM stay. */
export const inertLines = (text: string): string => text.replace(/[^\t\r\n\ufeff]+/g, inertLine);
