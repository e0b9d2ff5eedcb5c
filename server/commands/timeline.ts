import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { TIMELINE_FORMATS, type TimelineFormat } from '../../shared/api/timeline.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { isFolder } from '../files/is-folder.ts';
import { isPlanName } from '../files/plan-files.ts';
import { pathOfUri } from '../files/uri.ts';
import { type EditClips, editClips } from '../media/edit-clips.ts';
import { complain } from '../terminal.ts';
import { FORCE, OUTPUT, ROOT, type Surroundings } from './command.ts';
import { type OpenedPlan, planCommand } from './open-plan.ts';
import { type Parsed, WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const timeline = planCommand({
  name: 'timeline',
  usage: ['lamella timeline FILE [-o cut.otio] [options]'],
  about: later`Exports the edit for an editing program, on whole frames of the clips: OpenTimelineIO, FCPXML 1.11 or a CMX 3600 EDL. Or exports a shot list for a spreadsheet. Says what the format can't hold.`,
  options: {
    output: OUTPUT,
    force: FORCE,
    format: {
      oneOf: TIMELINE_FORMATS,
      about: later`otio (OpenTimelineIO), fcpxml, edl or csv (shot list). Default: by the file name's ending, else otio.`,
    },
    media: {
      value: later`folder`,
      shown: 'DIR',
      about: later`Folder of the clips on the editing computer, for absolute references. Default: references relative to the output file.`,
    },
    'start-timecode': {
      value: later`timecode`,
      shown: 'TC',
      about: later`Timecode of the first frame. A semicolon before the frames means drop frame. Default: 00:00:00:00.`,
    },
    bom: { about: later`Starts a shot list with a byte order mark, which some spreadsheets need.` },
    root: ROOT,
  },
  refuse({ output, bom, format }) {
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is the name of a plan, and would overwrite it.`,
      );
    if (bom !== undefined && chosenFormat(format, output) !== 'csv')
      throw new WrongUse(message`--bom goes with --format csv.`);
  },
  async run(opened, parsed, surroundings) {
    const { plans, id, file } = opened;
    const { options } = parsed;
    const { output, format, media, bom, 'start-timecode': start } = options;
    const { terminal } = surroundings;
    const chosen = chosenFormat(format, output);
    const clips = chosen === 'csv' ? null : await readEditClips(opened, parsed, surroundings);
    if (clips === 'stopped') return COULD_NOT_RUN;
    const target = path.resolve(terminal.cwd, typeof output === 'string' ? output : 'timeline');
    const made = plans.core.timeline(id, chosen, {
      ...clips,
      target: pathToFileURL(target).href,
      bom: bom === true,
      ...(typeof media === 'string' && { media }),
      ...(typeof start === 'string' && { startTimecode: start }),
    });
    if (!made.ok) {
      complain(terminal, `${file}: ${made.why}`);
      return COULD_NOT_RUN;
    }
    for (const note of made.notes) terminal.err(`${inertLine(note)}\n`);
    const what = chosen === 'csv' ? message`The shot list` : message`The timeline`;
    return writeOutput(terminal, options, what, chosen, made.text);
  },
});

/** As it is written, else by the ending of the output file. */
function chosenFormat(format: string | true | undefined, output: unknown): TimelineFormat {
  const ending = path.extname(String(output)).slice(1).toLowerCase();
  return TIMELINE_FORMATS.find((one) => one === (format ?? ending)) ?? 'otio';
}

/** The clips that the edit uses, beside the plan and in the folder of the media where that is here. */
async function readEditClips(
  { plans, id }: OpenedPlan,
  { options }: Parsed,
  { terminal, createClipReader }: Surroundings,
): Promise<EditClips | 'stopped'> {
  const named =
    typeof options.media === 'string' ? path.resolve(terminal.cwd, options.media) : null;
  const isHere = named !== null && (await isFolder(named));
  const plan = path.dirname(pathOfUri(id) ?? terminal.cwd);
  const stop = new AbortController();
  const unheard = terminal.onInterrupt(() => stop.abort());
  try {
    const clips = await editClips({
      core: plans.core,
      plan: id,
      folders: { plan, root: plans.rootOf(id), media: isHere ? named : null },
      createReader: createClipReader,
      signal: stop.signal,
    });
    return stop.signal.aborted ? 'stopped' : clips;
  } finally {
    unheard();
  }
}
