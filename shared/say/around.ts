/** What lies round a value that is not known exactly, behind the value: " (24 to 27)". */
import { endsWords } from './between.ts';

/** In brackets; nothing where no digit of the value shows it. */
export const inBrackets = (words: string): string => (words === '' ? '' : ` (${words})`);

/** @param print says the value and both ends alike */
export const aroundWords = (
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
  print: (value: number) => string,
): string => endsWords(print(value), print(low), print(high));
