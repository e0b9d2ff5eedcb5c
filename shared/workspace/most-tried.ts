/**
 * Limits the search for fixes of many findings. Each fix is tried: what it changes is read anew and
 * the findings are collected again, so the time grows faster than the text.
 */
import type { Checker } from '../api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../api/located.ts';

/** For all findings of a file: half a second. */
export const EFFORT_OF_FILE = 6_000_000;

/** For what the cursor or a selection touches: a twentieth of a second. */
export const EFFORT_OF_MENU = 400_000;

/**
 * Fixes of the findings, in their order, until `most` effort is spent: one list a finding that was
 * tried, the first in any case.
 */
export function fixesWithin(
  core: Pick<Checker, 'fixesOf' | 'effort'>,
  findings: readonly LocatedFinding[],
  most: number,
): readonly (readonly LocatedFix[])[] {
  const end = core.effort() + most;
  const tried: (readonly LocatedFix[])[] = [];
  for (const finding of findings) {
    if (tried.length > 0 && core.effort() >= end) break;
    tried.push(core.fixesOf(finding));
  }
  return tried;
}
