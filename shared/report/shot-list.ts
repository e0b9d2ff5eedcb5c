/**
 * The cuts of the edit as a table for spreadsheets: CSV by RFC 4180, a line a cut. A text that a
 * spreadsheet would take for a formula gets an apostrophe before it, since a plan may come from anybody.
 */

import { editJson } from '../figures/edit-contract.ts';
import type { CutFigures, EditFigures } from '../figures/edit-figures.ts';
import { ifKnown } from '../plan/field.ts';
import { timecode } from '../timeline/timecode.ts';
import { message } from '../words/message.ts';
import { joinWords, paceWords } from './edit-words.ts';
import { inertLine } from './inert.ts';

const HEAD = [
  'number',
  'cut',
  'shot',
  'start timecode',
  'end timecode',
  'start frame',
  'frames',
  'begins with',
  'speed',
  'clip',
  'source start s',
  'source end s',
  'frames uncovered',
  'enlarged',
  'grade',
  'remark',
] as const;

/**
 * @param start frame that the timecode of the edit starts with, and whether it drops numbers
 * @param bom whether it begins with a byte order mark, by which some spreadsheets know UTF-8
 */
export function shotList(edit: EditFigures, start: Start, bom: boolean): string {
  const rows = editJson(edit)!.cuts.map((cut, index): readonly (string | number | null)[] => {
    const { fields } = edit.cuts[index]!;
    const reframe = fields && ifKnown(fields.reframe);
    return [
      index + 1,
      cut.cut,
      cut.shot,
      timecodeAt(edit.cuts[index]!, 'startFrame', edit, start),
      timecodeAt(edit.cuts[index]!, 'endFrame', edit, start),
      cut.startFrame,
      cut.durationFrames,
      joinWords(cut),
      paceWords(cut),
      cut.clipFile ?? (cut.clip === null ? null : message`take ${cut.clip}`),
      cut.sourceStartS === null ? null : Number(cut.sourceStartS.toFixed(6)),
      cut.sourceEndS === null ? null : Number(cut.sourceEndS.toFixed(6)),
      cut.uncoveredFrames,
      reframe ?? null,
      (fields && ifKnown(fields.grade)) ?? null,
      (fields && ifKnown(fields.about)) ?? null,
    ];
  });
  const text = [HEAD, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
  return bom ? `\ufeff${text}` : text;
}

interface Start {
  readonly frame: number;
  readonly isDrop: boolean;
}

function timecodeAt(
  { track }: CutFigures,
  end: 'startFrame' | 'endFrame',
  { rate }: EditFigures,
  start: Start,
): string | null {
  if (!track.known || !rate.known) return null;
  return timecode(start.frame + track.value[end], rate.value, start.isDrop) ?? null;
}

/**
 * What a formula can begin with, in its full-width forms too, at the beginning of a cell or after
 * what some spreadsheets part cells by.
 */
const FORMULA = /(^|[;|])(["'\s]*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g;

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = inertLine(value).replace(FORMULA, "$1'$2");
  return /[",;\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
