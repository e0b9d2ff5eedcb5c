/** Rules about the text itself: reading finds which wording applies, the words are here. */
import type { Wording } from '../../text/problem.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { RuleCore, Words } from '../rule.ts';

export type TextRule = RuleCore<Wording>;

/**
 * The words for a code. A code without words is a fault of the program; the finding still says
 * where and of what kind it is, so that nothing is lost.
 */
export const wordsFrom =
  (wordings: Readonly<Record<string, (args: Wording['args']) => Words>>, fallback: string) =>
  ({ code, args }: Wording): Words =>
    Object.hasOwn(wordings, code)
      ? wordings[code]!(args)
      : { what: message`${inLanguage(fallback)} (${code}).` };

/** "Did you mean `x`?", where something is near. */
export const meant = (nearest: string | undefined): string =>
  nearest === undefined ? '' : message` Did you mean \`${nearest}\`?`;
