/** A sentence within another. */
import { languageInForce } from './message.ts';

/** "The shot is 2 stops underexposed." within a title: without its capital, where English has it, and stop. */
export function asAside(sentence: string): string {
  const bare = sentence.replace(/\.$/, '');
  return languageInForce() === 'en'
    ? bare.replace(/^[A-Z](?=[a-z]*:? )/, (first) => first.toLowerCase())
    : bare;
}
