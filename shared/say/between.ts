/** The ends of a value that is not known exactly, behind the value: f/25 (24 to 27). */
import { message } from '../words/message.ts';

interface Parts {
  readonly before: string;
  readonly number: string;
  readonly behind: string;
}

/** One of a thing is said as many are, whatever the language calls them. */
function inPlural(behind: string): string {
  const plurals = [
    [message`${'1'} stop`, message`${'1'} stops`],
    [message`${'1'} pixel`, message`${'1'} pixels`],
  ].map((forms) => forms.map((form) => form.replace('1', '')));
  for (const [one = '', many = ''] of plurals)
    if (behind.startsWith(one) && !behind.startsWith(many)) return many + behind.slice(one.length);
  return behind;
}

/** A number with what stands round it: "f/" and "25", "4.1" and " mm". */
function partsOf(words: string): Parts | undefined {
  const found = /^([^\d−+]*)([−+]?\d[\d.]*)(.*)$/su.exec(words);
  if (!found) return undefined;
  const [, before = '', number = '', behind = ''] = found;
  return { before, number, behind: inPlural(behind) };
}

/**
 * What lies between two ends as each would be said alone, without what they share with the value;
 * empty where both are said as the value is.
 */
export function endsWords(value: string, low: string, high: string): string {
  if (low === value && high === value) return '';
  const [at, from, to] = [partsOf(value), partsOf(low), partsOf(high)];
  const isAsValue =
    at &&
    from &&
    to &&
    [from, to].every((end) => at.before === end.before && at.behind === end.behind);
  return isAsValue ? message`${from.number} to ${to.number}` : spanWords(low, high);
}

/** "50 to 80 mm", "f/24 to 27": what both ends share is said once. */
export function spanWords(low: string, high: string): string {
  const [from, to] = [partsOf(low), partsOf(high)];
  if (!from || !to || from.before !== to.before || from.behind !== to.behind)
    return message`${low} to ${high}`;
  return from.before === ''
    ? message`${from.number} to ${high}`
    : message`${low} to ${to.number}${to.behind}`;
}
