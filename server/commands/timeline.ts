import { TIMELINE_FORMATS, type TimelineFormat } from '../../shared/api/timeline.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import { isPlanName } from '../files/plan-files.ts';
import { type Command, ROOT_HELP } from './command.ts';
import { openPlan } from './open-plan.ts';
import { parseOptions, WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

const OPTIONS = {
  output: { value: later`file`, short: 'o' },
  format: { oneOf: TIMELINE_FORMATS },
  root: { value: later`folder` },
};

export const timeline: Command = {
  name: 'timeline',
  usage: ['lamella timeline FILE [-o cut.otio] [options]'],
  about: later`Writes the edit of a plan for an editing program, as OpenTimelineIO with speeds, dissolves, beats and the clips that are kept; or as a shot list for a spreadsheet.`,
  options: [
    ['-o, --output FILE', later`Where to write it; left out, to standard output.`],
    [
      '--format otio|csv',
      later`OpenTimelineIO (default), or comma-separated values; left out, by the end of the file’s name.`,
    ],
    ROOT_HELP,
  ],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { terminal } = surroundings;
    const { output, format } = parsed.options;
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is a plan’s name; the timeline would take its place.`,
      );
    const opened = await openPlan('timeline', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id, file } = opened;
    const chosen = (format as TimelineFormat | undefined) ?? formatOf(output);
    const made = plans.core.timeline(id, chosen);
    if (!made.ok) {
      terminal.err(`lamella: ${file}: ${made.why}\n`);
      return COULD_NOT_RUN;
    }
    if (typeof output !== 'string') {
      terminal.out(made.text);
      return NOTHING_FOUND;
    }
    const what = chosen === 'csv' ? message`The shot list` : message`The timeline`;
    return writeOutput(terminal, output, what, made.text);
  },
};

const formatOf = (output: string | true | undefined): TimelineFormat =>
  typeof output === 'string' && /\.csv$/i.test(output) ? 'csv' : 'otio';
