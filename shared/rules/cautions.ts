/** What every word about something that can hurt ends in. */
import { message } from '../words/message.ts';

export const deferring = (): string =>
  message`Your local rules and the word of a qualified person decide.`;
