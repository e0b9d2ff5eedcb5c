/** Several things in one sentence. */
import { message } from './message.ts';

/** "a", "a and b", "a, b and c" */
export const allOf = (words: readonly string[]): string =>
  words.length < 2
    ? words.join('')
    : message`${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;

/** "a", "a or b", "a, b or c" */
export const anyOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : message`${words.slice(0, -1).join(', ')} or ${words.at(-1)!}`;
