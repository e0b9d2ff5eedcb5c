/** What every word about something that can hurt ends in. */
export const DEFER = 'Your local rules and the word of a qualified person decide.';
