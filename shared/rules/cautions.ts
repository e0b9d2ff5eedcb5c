/** The sentence that every message about something that can hurt ends with. */
import { message } from '../words/message.ts';

export const deferring = (): string =>
  message`Follow local rules and the advice of a qualified person.`;
