/** `source.fixAll.lamella`: the fixes that nobody needs to choose or weigh. */
import type { LocatedEdit, Position } from '../../shared/assist/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Core } from '../../shared/workspace/facade.ts';

export const FIX_ALL = 'source.fixAll.lamella';

/**
 * Edits of every finding with exactly one fix, without a price and within the file. Where two
 * would touch, the first in the text is taken; the next run takes the other.
 */
export function fixAll(core: Core, file: FileId): readonly LocatedEdit[] {
  const taken: LocatedEdit[] = [];
  for (const finding of core.findings(file)) {
    const [fix, ...others] = core.fixesOf(finding);
    if (!fix || others.length > 0 || fix.price !== undefined) continue;
    if (fix.edits.some((edit) => edit.file !== file)) continue;
    // The same edit may be two findings' way out.
    if (fix.edits.some((edit) => taken.some((other) => overlap(edit, other)))) continue;
    taken.push(...fix.edits);
  }
  return taken;
}

const overlap = ({ range: a }: LocatedEdit, { range: b }: LocatedEdit): boolean =>
  !(isBefore(a.end, b.start) || isBefore(b.end, a.start));

/** Strictly: edits that meet at one point have no order of their own. */
const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
