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

/** Text inside Markdown: inert, and nothing in it is markup. What only looks like markup stays as it is. */
export const inertMarkdown = (text: string): string =>
  inertLine(text)
    .replace(/[\\`*[\]#|~<>]/g, '\\$&')
    // Inside a word it is a letter like others: A001_C0007.mov.
    .replace(/(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, '\\_')
    .replace(/&/g, '&amp;')
    .replace(/^(\s*)([-=+])/, '$1\\$2')
    // "1. " begins a list; "10.4 min" doesn't.
    .replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2')
    .replace(/:\/\//g, ':\u200b//');

/**
 * The same of words of a message, where what stands between backticks is a word of the plan's: that is
 * code, as far as nothing in it would end or break it.
 */
export const wordedMarkdown = (text: string): string =>
  text
    .split(/(`[^`|&]+`)/)
    .map((part, index) => (index % 2 ? inertLine(part) : inertMarkdown(part)))
    .join('');
