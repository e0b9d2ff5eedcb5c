/** Values as YAML that stands in a line. */
import { quote } from '../syntax/quotes.ts';

/** Words that some readers of YAML take for something other than text. */
const NO_TEXT = /^(?:true|false|yes|no|on|off|null|y|n)$/i;

/** Free text: plain where no reader of YAML takes it for anything else. */
export const freeText = (text: string): string =>
  /^[A-Za-z][\w./-]*(?: [\w./-]+)*$/.test(text) && !NO_TEXT.test(text) ? text : quote(text);

/** `{ file: a.mp4, take: 2 }` */
export const flowMap = (pairs: Iterable<readonly [key: string, written: string]>): string =>
  `{ ${[...pairs].map(([key, written]) => `${key}: ${written}`).join(', ')} }`;
