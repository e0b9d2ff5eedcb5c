/** Edits of a plan, said by place, as edits of its text. */

import type { LocatedEdit } from '../api/located.ts';
import { toTextEdits } from '../plan/edits.ts';
import { isFirst } from '../plan/entry-id.ts';
import type { PlanEdit } from '../plan/problem.ts';
import type { Store } from './store.ts';

/** Empty if the text is not loaded, or the name is defined twice. */
export function locatedEdits(store: Store, edit: PlanEdit): LocatedEdit[] {
  const file = edit.op === 'add-entry' ? edit.file : edit.at.file;
  const text = store.text(file);
  if (!text || (edit.op !== 'add-entry' && !isFirst(edit.at.entry))) return [];
  return toTextEdits(edit, text).map(({ chunk, span, text: written }) => ({
    file,
    range: {
      start: text.positionOf(chunk, span.start),
      end: text.positionOf(chunk, span.end),
    },
    text: written,
  }));
}
