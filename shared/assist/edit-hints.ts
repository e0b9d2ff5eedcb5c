/** What stands beside the cuts of an edit: where each begins, and what it uses of its clip. */

import type { InlayHint } from '../api/facade.ts';
import type { Range } from '../api/located.ts';
import type { CutFigures, EditFigures } from '../figures/edit-figures.ts';
import { valueIn } from '../figures/figure.ts';
import { entryAt, isInside } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import type { FileId } from '../plan/place.ts';
import { framesWords, secondsWords } from '../say/timeline.ts';
import { toNumber } from '../timeline/exact.ts';
import { timecode } from '../timeline/timecode.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { hintPlace } from './hint-place.ts';

const EDIT = entryAt('edit');

type Hint = Omit<InlayHint, 'kind' | 'position'>;

export function editHintsIn(context: Context, file: FileId, range: Range): readonly InlayHint[] {
  const { store, analysis, locator } = context;
  const text = store.text(file);
  if (!text) return [];
  const shown = store
    .chunkIds(file)
    .slice(text.locate(range.start).index, text.locate(range.end).index + 1)
    .filter((id) => id === EDIT || isInside(EDIT, id));
  const edit = shown.length > 0 ? analysis.edit(file) : null;
  if (!edit) return [];
  const chunks = new Set(shown);
  return edit.cuts.flatMap((cut): InlayHint[] => {
    const chunk = analysis.entries.source(file, cut.at.entry)?.chunk;
    if (!cut.fields || chunk === undefined || !chunks.has(chunk)) return [];
    const beside = (field: Field<unknown>, hint: Hint | null): InlayHint[] =>
      hint && field.state === 'known'
        ? [{ kind: 'cuts', position: hintPlace(text, locator.rangeOf(field.at).end), ...hint }]
        : [];
    return [
      ...beside(cut.fields.duration, placeHint(cut, edit)),
      ...beside(cut.fields.speed, sourceHint(cut)),
    ].sort(
      (a, b) => a.position.line - b.position.line || a.position.character - b.position.character,
    );
  });
}

function placeHint({ track }: CutFigures, { rate }: EditFigures): Hint | null {
  const fps = valueIn(rate);
  if (!track.known || !fps) return null;
  const { startFrame, endFrame } = track.value;
  const start = timecode(startFrame, fps) ?? message`frame ${startFrame}`;
  return {
    label: message`at ${start} · ${framesWords(endFrame - startFrame)}`,
    tooltip: message`Start of the cut in the edit (SMPTE ST 12-1 timecode), and its length.`,
  };
}

function sourceHint({ sourceS }: CutFigures): Hint | null {
  if (!sourceS.known) return null;
  return {
    label: message`uses ${secondsWords(toNumber(sourceS.value))}`,
    tooltip: message`Length of the clip that the cut uses at this speed.`,
  };
}
