/**
 * Rules about the text itself. Reading the text decides which wording applies; the words are here.
 */
import { inLanguage, message } from '../../words/message.ts';
import type { RuleCore, Words } from '../rule.ts';

export interface TextFacts {
  readonly code: string;
  readonly args: Readonly<Record<string, string>>;
}

export type TextRule = RuleCore<TextFacts>;

type Wording = (args: Readonly<Record<string, string>>) => Words;

/**
 * The words for a code. A code without words is a fault of the program; the finding still says
 * where and of what kind it is, so that nothing is lost.
 */
export const wordsFrom =
  (wordings: Readonly<Record<string, Wording>>, fallback: string) =>
  ({ code, args }: TextFacts): Words =>
    Object.hasOwn(wordings, code)
      ? wordings[code]!(args)
      : { what: message`${inLanguage(fallback)} (${code}).` };

/** "Did you mean `x`?", where something is near. */
export const meant = (nearest: string | undefined): string =>
  nearest === undefined ? '' : message` Did you mean \`${nearest}\`?`;
