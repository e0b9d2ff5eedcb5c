/** Titles of the fixes that are found while reading the text. */
import type { TextFix } from '../../text/chunk.ts';
import { message } from '../../words/message.ts';

type Title = (args: Readonly<Record<string, string>>) => string;

const TITLES: Readonly<Record<string, Title>> = {
  'add-comma': ({ text = '' }) => message`Put a comma before ${text}`,
  'add-colon': () => message`Put a colon behind it`,
  'break-lines': () => message`Break the lines with line feeds`,
  'close-bracket': ({ bracket = '' }) => message`Close the bracket with ${bracket}`,
  'close-quote': ({ quote = '' }) => message`Close the quote with ${quote}`,
  'escape-backslash': () => message`Double the backslash`,
  indent: () => message`Indent it as its neighbours`,
  'make-comment': () => message`Keep it as a comment, with a space behind the #`,
  'put-in-brackets': () => message`Put it in brackets`,
  quote: () => message`Put the value in quotes`,
  'remove-anchor': () => message`Remove the anchor`,
  'remove-character': () => message`Remove the character`,
  'remove-line': () => message`Remove the line`,
  'remove-tag': () => message`Remove the tag`,
  'replace-alias': ({ value = '' }) => message`Write the value out: ${value}`,
  'replace-blanks': () => message`Write spaces`,
  'replace-tabs': () => message`Replace tabs by spaces`,
  'space-after-colon': () => message`Put a space behind the colon`,
  'use-a-point': ({ text = '' }) => message`Write ${text || message`a decimal point`}`,
};

export const FIX_CODES: readonly string[] = Object.keys(TITLES);

export const fixTitle = ({ code, args }: TextFix): string => TITLES[code]?.(args) ?? code;
