/** Values as YAML that stands in a line. */
import { quote } from '../syntax/quotes.ts';

/** Words that some readers of YAML take for something other than text. */
const NO_TEXT = /^(?:true|false|yes|no|on|off|null|y|n)$/i;

/** Free text: plain where no reader of YAML takes it for anything else. */
export const freeText = (text: string): string =>
  /^[A-Za-z][\w./-]*(?: [\w./-]+)*$/.test(text) && !NO_TEXT.test(text) ? text : quote(text);

/** No reader of YAML takes such a path for a number or anything else. */
const PLAIN_PATH = /^(?!-)[\w./-]*\.[A-Za-z]{2}\w*$/;

/** A path with an ending: plain also where it begins with a digit or leads upward. */
export const filePath = (path: string): string => (PLAIN_PATH.test(path) ? path : freeText(path));

/** `{ file: a.mp4, take: 2 }` */
export const flowMap = (pairs: Iterable<readonly [key: string, written: string]>): string =>
  `{ ${[...pairs].map(([key, written]) => `${key}: ${written}`).join(', ')} }`;
