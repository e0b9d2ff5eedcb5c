import { TIMELINE_FORMATS, type TimelineFormat } from '../../shared/api/timeline.ts';
import { later, message } from '../../shared/words/message.ts';
import { isPlanName } from '../files/plan-files.ts';
import { COULD_NOT_RUN, OUTPUT, ROOT } from './command.ts';
import { planCommand } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const timeline = planCommand({
  name: 'timeline',
  usage: ['lamella timeline FILE [-o cut.otio] [options]'],
  about: later`Writes the edit of a plan for an editing program, as OpenTimelineIO with speeds, dissolves, beats and the clips that are kept; or as a shot list for a spreadsheet.`,
  options: {
    output: OUTPUT,
    format: {
      oneOf: TIMELINE_FORMATS,
      about: later`OpenTimelineIO (default), or comma-separated values; left out, by the end of the file’s name.`,
    },
    root: ROOT,
  },
  refuse({ output }) {
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is a plan’s name; the timeline would take its place.`,
      );
  },
  async run({ plans, id, file }, { options: { output, format } }, { terminal }) {
    const chosen = (format ?? (/\.csv$/i.test(String(output)) ? 'csv' : 'otio')) as TimelineFormat;
    const made = plans.core.timeline(id, chosen);
    if (!made.ok) {
      terminal.err(`lamella: ${file}: ${made.why}\n`);
      return COULD_NOT_RUN;
    }
    const what = chosen === 'csv' ? message`The shot list` : message`The timeline`;
    return writeOutput(terminal, output, what, made.text);
  },
});
