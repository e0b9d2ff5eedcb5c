/** The edit of a plan as a file for an editing program or a spreadsheet, or why there is none. */
import type { TimelineFile, TimelineFormat, TimelineOptions } from '../api/timeline.ts';
import type { EditFigures } from '../figures/edit-figures.ts';
import { reasonOf } from '../figures/figure.ts';
import { ifKnown } from '../plan/field.ts';
import { type FileId, fileName } from '../plan/place.ts';
import { KINDS } from '../quantity/index.ts';
import type { Rational } from '../quantity/rational.ts';
import { shotList } from '../report/shot-list.ts';
import { edl } from '../report/timeline/edl.ts';
import { fcpxml } from '../report/timeline/fcpxml.ts';
import { programmeOf } from '../report/timeline/gather.ts';
import { edlNotes, fcpxmlNotes, programmeNotes } from '../report/timeline/notes.ts';
import { otio } from '../report/timeline/otio.ts';
import { fromRational } from '../timeline/exact.ts';
import { listed } from '../timeline/listed.ts';
import type { Programme } from '../timeline/programme.ts';
import { dropsFrames, readTimecode } from '../timeline/timecode.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';

export function timelineOf(
  { analysis }: Context,
  file: FileId,
  format: TimelineFormat,
  options: TimelineOptions = {},
): TimelineFile {
  const edit = analysis.edit(file);
  if (!edit) return { ok: false, why: message`the plan has no edit with cuts` };
  const notPlaced = (reason: string): TimelineFile => ({
    ok: false,
    why: message`the cuts can't be placed yet: ${reason}`,
  });
  const { totalFrames, rate } = edit;
  if (!totalFrames.known || !rate.known) {
    const reason = totalFrames.known ? null : reasonOf(totalFrames);
    return notPlaced(reason ?? message`it depends on an invalid entry`);
  }
  const start = startOf(options.startTimecode, rate.value);
  if (!start) {
    const fps = KINDS.rate.print(rate.value);
    return { ok: false, why: message`${options.startTimecode ?? ''} is not a timecode at ${fps}` };
  }
  if (format === 'csv')
    return { ok: true, text: shotList(edit, start, options.bom ?? false), notes: [] };
  const title = ifKnown(analysis.reader(file).plan('title')) ?? fileName(file);
  const programme = programmeOf(edit, rate.value, { ...options, title, plan: file, start });
  return printed(format, programme, edit);
}

function printed(
  format: Exclude<TimelineFormat, 'csv'>,
  programme: Programme,
  { plan }: EditFigures,
): TimelineFile {
  const notes = programmeNotes(programme);
  switch (format) {
    case 'otio':
      return { ok: true, text: otio(programme), notes };
    case 'fcpxml': {
      const deliver = ifKnown(plan.deliver);
      const text = fcpxml(programme, (deliver && ifKnown(deliver.resolution)) ?? null);
      return { ok: true, text, notes: [...notes, ...fcpxmlNotes(programme)] };
    }
    case 'edl': {
      const list = listed(programme.cuts, fromRational(programme.rate));
      const all = [...notes, ...edlNotes(programme, list)];
      const text = edl(programme, list.events, all);
      const fps = KINDS.rate.print(programme.rate);
      return text === null
        ? { ok: false, why: message`there is no timecode at ${fps}, which an EDL needs` }
        : { ok: true, text, notes: all };
    }
  }
}

function startOf(written: string | undefined, rate: Rational): Programme['start'] | undefined {
  return written === undefined
    ? { frame: 0, isDrop: dropsFrames(rate) }
    : readTimecode(written, rate);
}
