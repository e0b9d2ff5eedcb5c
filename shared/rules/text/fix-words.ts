/** Titles of the fixes that are found while reading the text. */
import type { TextFix } from '../../text/chunk.ts';

type Title = (args: Readonly<Record<string, string>>) => string;

const TITLES: Readonly<Record<string, Title>> = {
  'add-colon': () => 'Put a colon behind it',
  'break-lines': () => 'Break the lines as the rest of the file does',
  'close-bracket': ({ bracket = '' }) => `Close the bracket with ${bracket}`,
  'close-quote': ({ quote = '' }) => `Close the quote with ${quote}`,
  'escape-backslash': () => 'Double the backslash',
  indent: () => 'Indent it as its neighbours',
  'make-comment': () => 'Keep it as a comment, with a space behind the #',
  'put-in-brackets': () => 'Put it in brackets',
  quote: () => 'Put the value in quotes',
  'remove-anchor': () => 'Remove the anchor',
  'remove-character': () => 'Remove the character',
  'remove-line': () => 'Remove the line',
  'remove-tag': () => 'Remove the tag',
  'replace-alias': ({ value = '' }) => `Write the value out: ${value}`,
  'replace-tabs': () => 'Replace tabs by spaces',
  'space-after-colon': () => 'Put a space behind the colon',
  'use-a-point': ({ text = '' }) => `Write ${text || 'a decimal point'}`,
};

export const FIX_CODES: readonly string[] = Object.keys(TITLES);

export const fixTitle = ({ code, args }: TextFix): string => TITLES[code]?.(args) ?? code;
