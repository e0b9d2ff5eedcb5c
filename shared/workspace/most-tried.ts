/**
 * Limits the search for fixes of all findings of a file. Each fix is tried, and after each trial
 * the findings are collected again, so the time grows with the product of the two.
 */

/** Limit of the product of findings searched and findings present: some seconds. */
const MOST_WORK = 20_000_000;
/** So many findings are searched for fixes in any case. */
const LEAST = 100;

/** How many of that many findings are asked for their fixes. */
export const mostTried = (findings: number): number =>
  Math.min(findings, Math.max(LEAST, Math.floor(MOST_WORK / Math.max(1, findings))));
