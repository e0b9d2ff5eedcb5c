/** The title of a fix with its side effects, as a list of fixes shows it. */
import { message } from '../words/message.ts';

/** "Stop down to f/11 (the best compromise; everything gets softer)": one pair of brackets. */
export function titleWithPrice(title: string, sideEffects: string | undefined): string {
  if (!sideEffects) return title;
  return title.endsWith(')') && title.includes(' (')
    ? message`${title.slice(0, -1)}; ${sideEffects})`
    : message`${title} (${sideEffects})`;
}
