/** The fixes that nobody needs to choose or weigh: exactly one of its finding, and without a price. */
import type { Checker, OfferedFix } from '../api/facade.ts';
import type { LocatedEdit, Position } from '../api/located.ts';
import type { FileId } from '../plan/place.ts';
import { EFFORT_OF_FILE, fixesWithin } from './most-tried.ts';

/**
 * Of every finding in `file` with exactly one fix, without a price; in a file of very many findings,
 * of the first ones. Where two would touch, or have a price together, the first in the text is taken:
 * the other is left to the next run, or to be weighed.
 * @param mayEdit which files a fix may change; left out: the one that its finding stands in
 */
export function freeFixes(
  core: Pick<Checker, 'findings' | 'fixesOf' | 'effort' | 'areFree'>,
  file: FileId,
  mayEdit: (other: FileId) => boolean = (other) => other === file,
): readonly OfferedFix[] {
  const apart: OfferedFix[] = [];
  const found = core.findings(file);
  for (const [index, [only, ...others]] of fixesWithin(core, found, EFFORT_OF_FILE).entries()) {
    if (!only || others.length > 0 || only.sideEffects !== undefined) continue;
    if (!only.edits.every((edit) => mayEdit(edit.file))) continue;
    const fix = { ...only, finding: found[index]! };
    // The same edit may be two findings' way out.
    if (!apart.some((other) => touch(fix, other))) apart.push(fix);
  }
  return free(core, [], apart);
}

/** `taken`, and of `more` what is free with it; by halves, since hardly ever one of them is not. */
function free(
  core: Pick<Checker, 'areFree'>,
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

const overlap = (one: LocatedEdit, other: LocatedEdit): boolean =>
  one.file === other.file &&
  !(isBefore(one.range.end, other.range.start) || isBefore(other.range.end, one.range.start));

/** Strictly: edits that meet at one point have no order of their own. */
const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
