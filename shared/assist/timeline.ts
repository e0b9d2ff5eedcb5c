/** The edit of a plan as a file for an editing program or a spreadsheet, or why there is none. */
import type { TimelineFile, TimelineFormat } from '../api/timeline.ts';
import { reasonOf } from '../figures/figure.ts';
import { ifKnown } from '../plan/field.ts';
import { type FileId, fileName } from '../plan/place.ts';
import { otio } from '../report/otio.ts';
import { shotList } from '../report/shot-list.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';

export function timelineOf(
  { analysis }: Context,
  file: FileId,
  format: TimelineFormat,
): TimelineFile {
  const edit = analysis.edit(file);
  if (!edit) return { ok: false, why: message`the plan has no edit with cuts` };
  if (!edit.totalFrames.known) {
    const reason = reasonOf(edit.totalFrames) ?? message`it depends on an invalid entry`;
    return { ok: false, why: message`the cuts can't be placed yet: ${reason}` };
  }
  if (format === 'csv') return { ok: true, text: shotList(edit) };
  const title = ifKnown(analysis.reader(file).plan('title')) ?? fileName(file);
  return { ok: true, text: otio(edit, title) ?? '' };
}
