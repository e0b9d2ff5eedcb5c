/** Plans for tests: given to a core as files of a workspace that exists only here. */

import type { Core } from '../../shared/api/facade.ts';
import type { LocatedEdit, LocatedFinding } from '../../shared/api/located.ts';
import { createCore } from '../../shared/core/core.ts';
import { toTextEdits } from '../../shared/plan/edits.ts';
import { entryAt } from '../../shared/plan/entry-id.ts';
import type { Place } from '../../shared/plan/place.ts';
import type { PlanEdit } from '../../shared/plan/problem.ts';
import { ChunkedText } from '../../shared/text/chunked-text.ts';
import { entryKindOf } from '../../shared/workspace/entry-kinds.ts';

export const ROOT = 'file:///w';
export const PLAN = `${ROOT}/plan.shootplan.yaml`;

/** A core that holds `text` as the plan, and other files by their name. */
export function coreWith(text: string, others: Readonly<Record<string, string>> = {}): Core {
  const core = createCore({ rootOf: () => ROOT });
  core.give(PLAN, text);
  for (const [name, other] of Object.entries(others)) core.give(`${ROOT}/${name}`, other);
  for (const file of core.wanted(PLAN)) core.refuse(file, 'not-found');
  return core;
}

/** The same core with another text as the plan, read as an edit: quicker, and the same by law A. */
export function given(core: Core, text: string): Core {
  core.give(PLAN, text);
  for (const file of core.wanted(PLAN)) core.refuse(file, 'not-found');
  return core;
}

export const findingsOf = (text: string): readonly LocatedFinding[] =>
  coreWith(text).findings(PLAN);

/** Applies edits to a text, last first, each at its place in the text as it was. */
export function applied(
  text: string,
  edits: readonly Pick<LocatedEdit, 'range' | 'text'>[],
): string {
  const document = ChunkedText.from(text);
  const offsetOf = (position: LocatedEdit['range']['start']) => {
    const { index, offset } = document.locate(position);
    return document.absolute(index, offset);
  };
  return [...edits]
    .reverse()
    .sort(
      (a, b) =>
        b.range.start.line - a.range.start.line ||
        b.range.start.character - a.range.start.character,
    )
    .map(({ range, text: written }) => ({
      from: offsetOf(range.start),
      to: offsetOf(range.end),
      written,
    }))
    .reduce((now, { from, to, written }) => now.slice(0, from) + written + now.slice(to), text);
}

/** The place of 'shots/frost/aperture': the entry, and the path below it. */
function placeOf(path: string): Place {
  const steps = path.split('/');
  const isEntry = (length: number) =>
    entryKindOf(entryAt(...steps.slice(0, length))).kind !== 'container';
  const length = steps.findIndex((_, index) => isEntry(index + 1)) + 1 || steps.length;
  return { file: PLAN, entry: entryAt(...steps.slice(0, length)), path: steps.slice(length) };
}

/** `text` with values exchanged by path ('shots/frost/aperture': 'f/4'); null takes a pair out. */
export function changed(text: string, change: Readonly<Record<string, string | null>>): string {
  return Object.entries(change).reduce((now, [path, value]) => {
    const document = ChunkedText.from(now);
    const at = placeOf(path);
    const edit: PlanEdit =
      value === null
        ? { op: 'remove', at: { ...at, part: 'pair' } }
        : { op: 'set', at, text: value };
    const edits = toTextEdits(edit, document).map(({ chunk, span, text: written }) => ({
      range: {
        start: document.positionOf(chunk, span.start),
        end: document.positionOf(chunk, span.end),
      },
      text: written,
    }));
    if (edits.length === 0 && value === null) throw new Error(`Nothing to change at ${path}`);
    return applied(now, edits);
  }, text);
}
