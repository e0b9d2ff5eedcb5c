/** What things are called, with the article that a sentence needs. */
import { inLanguage, message } from './message.ts';

/** No article goes before these: "two lengths", "frames per second", "ISO speeds". */
const NO_ARTICLE =
  /^(closest|frames|illuminance|ISO speeds|luminance|measured|music|power|preflight|stops|takes|two|white|width)/;

/**
 * "an extension tube", "a lens", "ISO speeds", in the language in force.
 * @param english as a table has it
 */
export const withArticle = (english: string): string =>
  NO_ARTICLE.test(english)
    ? inLanguage(english)
    : /^([aeio]|f-|ISO)/.test(english)
      ? message`an ${inLanguage(english)}`
      : message`a ${inLanguage(english)}`;
