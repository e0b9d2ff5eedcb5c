/** The edit on the sheet: its picture, and a table of its cuts. */

import type { EditSheet } from '../../api/sheet.ts';
import { editJson } from '../../figures/edit-contract.ts';
import type { EditFigures } from '../../figures/edit-figures.ts';
import { beatsBefore } from '../../timeline/beats.ts';
import { fromRational, toNumber } from '../../timeline/exact.ts';
import { editTable, totalWords } from '../edit-words.ts';
import { type Beat, editDrawing } from './drawings/edit.ts';

export function editSheet(edit: EditFigures | null): EditSheet | null {
  const json = editJson(edit);
  if (!edit || !json) return null;
  return {
    total: totalWords(json),
    cuts: json.cuts.map(({ cut }) => cut),
    table: editTable(json),
    drawing: editDrawing(json, beatsOf(edit)),
  };
}

/** More than a picture can show. */
const MOST_BEATS = 4000;

const beatsOf = ({ music, rate, totalFrames }: EditFigures): readonly Beat[] =>
  music.known && rate.known && totalFrames.known
    ? beatsBefore(music.value, fromRational(rate.value), totalFrames.value, MOST_BEATS).map(
        ({ frame, isBar }) => ({ frame: toNumber(frame), isBar }),
      )
    : [];
