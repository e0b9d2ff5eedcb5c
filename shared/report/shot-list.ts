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

export function shotList(edit: EditFigures): string {
  const rows = editJson(edit)!.cuts.map((cut, index): readonly (string | number | null)[] => {
    const { fields } = edit.cuts[index]!;
    const reframe = fields && ifKnown(fields.reframe);
    return [
      index + 1,
      cut.cut,
      cut.shot,
      cut.startTimecode,
      endTimecode(edit.cuts[index]!, edit),
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
  return [HEAD, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function endTimecode({ track }: CutFigures, { rate }: EditFigures): string | null {
  if (!track.known || !rate.known) return null;
  return timecode(track.value.endFrame, rate.value) ?? null;
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = inertLine(value);
  // Spreadsheets of many countries part cells by semicolons, and take full-width signs too.
  const safe = text.replace(/(^|;)(?=[\s"]*[=+\-@＝＋－＠])/g, "$1'");
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
