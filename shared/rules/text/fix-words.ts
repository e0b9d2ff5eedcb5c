/** Titles of the fixes that are found while reading the text. */
import type { Wording } from '../../text/problem.ts';
import { message } from '../../words/message.ts';

type Title = (args: Readonly<Record<string, string>>) => string;

const TITLES: Readonly<Record<string, Title>> = {
  'add-comma': ({ text = '' }) => message`Insert a comma before ${text}`,
  'add-colon': () => message`Add a colon after it`,
  'break-lines': () => message`Convert line endings to line feeds`,
  'close-bracket': ({ bracket = '' }) => message`Close the bracket with ${bracket}`,
  'close-quote': ({ quote = '' }) => message`Close the quote with ${quote}`,
  'escape-backslash': () => message`Double the backslash`,
  indent: () => message`Indent it like its neighbours`,
  'make-comment': () => message`Keep it as a comment (space after the #)`,
  'put-in-brackets': () => message`Put it in brackets`,
  quote: () => message`Put the value in quotes`,
  'remove-anchor': () => message`Remove the anchor`,
  'remove-character': () => message`Remove the character`,
  'remove-line': () => message`Remove the line`,
  'remove-tag': () => message`Remove the tag`,
  'replace-alias': ({ value = '' }) => message`Replace the alias with its value, ${value}`,
  'replace-blanks': () => message`Replace it with spaces`,
  'replace-tabs': () => message`Replace tabs with spaces`,
  'space-after-colon': () => message`Add a space after the colon`,
  'use-a-point': ({ text = '' }) => message`Write ${text || message`a decimal point`}`,
};

export const FIX_CODES: readonly string[] = Object.keys(TITLES);

export const fixTitle = ({ code, args }: Wording): string => TITLES[code]?.(args) ?? code;
