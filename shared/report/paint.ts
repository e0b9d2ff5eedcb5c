/** Colours of a terminal, by what they stand for. */
import type { Severity } from '../rules/rule.ts';

/** SGR codes: bold, and a hue per severity that stays readable on dark and light grounds. */
const CODES = {
  error: '1;31',
  warning: '1;33',
  note: '1;34',
  hint: '2',
  heading: '1',
  aside: '2',
  fix: '32',
} as const satisfies Record<Severity, string> & Record<string, string>;

export type Paint = (as: keyof typeof CODES, text: string) => string;

export const painter =
  (colour: boolean): Paint =>
  (as, text) =>
    colour && text !== '' ? `\u001b[${CODES[as]}m${text}\u001b[0m` : text;
