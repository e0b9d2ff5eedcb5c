/**
 * How far fixes are asked for where all of a file's findings are gone through. Each fix is tried, and
 * after each the findings are drawn together anew: in a file of very many the two multiply.
 */

/** Findings asked of times findings there are: some seconds. */
const MOST_WORK = 20_000_000;
/** However many there are, so many are asked of. */
const LEAST = 100;

/** How many of that many findings are asked for their fixes. */
export const mostTried = (findings: number): number =>
  Math.min(findings, Math.max(LEAST, Math.floor(MOST_WORK / Math.max(1, findings))));
