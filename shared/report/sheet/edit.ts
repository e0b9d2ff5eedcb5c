/** The edit on the sheet: its picture, and a table of its cuts. */

import type { EditSheet } from '../../api/sheet.ts';
import type { EditFigures } from '../../figures/edit-figures.ts';
import { editJson } from '../../figures/edit-json.ts';
import { beatAt } from '../../timeline/beats.ts';
import { fromRational, times, toNumber } from '../../timeline/exact.ts';
import { editHead, editRow, totalWords } from '../edit-text.ts';
import { type Beat, editDrawing } from './drawings/edit.ts';

export function editSheet(edit: EditFigures | null): EditSheet | null {
  const json = editJson(edit);
  if (!edit || !json) return null;
  return {
    total: totalWords(json),
    head: editHead(),
    rows: json.cuts.map((cut) => ({ cut: cut.cut, cells: editRow(cut) })),
    drawing: editDrawing(json, beatsOf(edit)),
  };
}

/** More than a picture can show. */
const MOST_BEATS = 4000;

function beatsOf({ music, rate, totalFrames }: EditFigures): readonly Beat[] {
  if (!music.known || !rate.known || !totalFrames.known) return [];
  const fps = fromRational(rate.value);
  const found: Beat[] = [];
  for (let index = 0; index < MOST_BEATS; index++) {
    const frame = toNumber(times(beatAt(music.value, index), fps));
    if (frame >= totalFrames.value) return found;
    const { bar } = music.value;
    found.push({ frame, isBar: bar !== undefined && index % bar === 0 });
  }
  return [];
}
