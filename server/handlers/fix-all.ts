/** `source.fixAll.lamella`: the fixes that nobody needs to choose or weigh. */

import type { Core, OfferedFix } from '../../shared/api/facade.ts';
import type { LocatedEdit, Position } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { mostTried } from '../../shared/workspace/most-tried.ts';

export const FIX_ALL = 'source.fixAll.lamella';

/**
 * Edits of every finding with exactly one fix, without a price and within the file; in a file of very
 * many findings, of the first ones. Where two would touch, or have a price together, the first in the
 * text is taken: the other is left to the next run, or to be weighed.
 */
export function fixAll(core: Core, file: FileId): readonly LocatedEdit[] {
  const apart: OfferedFix[] = [];
  const found = core.findings(file);
  for (const finding of found.slice(0, mostTried(found.length))) {
    const [only, ...others] = core.fixesOf(finding);
    if (!only || others.length > 0 || only.sideEffects !== undefined) continue;
    if (only.edits.some((edit) => edit.file !== file)) continue;
    const fix = { ...only, finding };
    // The same edit may be two findings' way out.
    if (!apart.some((other) => touch(fix, other))) apart.push(fix);
  }
  return free(core, [], apart).flatMap(({ edits }) => edits);
}

/** `taken`, and of `more` what is free with it; by halves, since hardly ever one of them is not. */
function free(
  core: Core,
  taken: readonly OfferedFix[],
  more: readonly OfferedFix[],
): readonly OfferedFix[] {
  const all = [...taken, ...more];
  if (all.length < 2 || core.areFree(all)) return all;
  if (more.length < 2) return taken;
  const half = Math.ceil(more.length / 2);
  return free(core, free(core, taken, more.slice(0, half)), more.slice(half));
}

const touch = (one: OfferedFix, other: OfferedFix): boolean =>
  one.edits.some((edit) => other.edits.some((its) => overlap(edit, its)));

const overlap = ({ range: a }: LocatedEdit, { range: b }: LocatedEdit): boolean =>
  !(isBefore(a.end, b.start) || isBefore(b.end, a.start));

/** Strictly: edits that meet at one point have no order of their own. */
const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
