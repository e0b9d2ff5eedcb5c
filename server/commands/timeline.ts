import { TIMELINE_FORMATS, type TimelineFormat } from '../../shared/api/timeline.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { isPlanName } from '../files/plan-files.ts';
import { complain } from '../terminal.ts';
import { FORCE, OUTPUT, ROOT } from './command.ts';
import { planCommand } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const timeline = planCommand({
  name: 'timeline',
  usage: ['lamella timeline FILE [-o cut.otio] [options]'],
  about: later`Exports the edit for an editing program: OpenTimelineIO with speeds, dissolves, beats and kept clips, or a shot list for a spreadsheet.`,
  options: {
    output: OUTPUT,
    force: FORCE,
    format: {
      oneOf: TIMELINE_FORMATS,
      about: later`otio (OpenTimelineIO) or csv. Default: by the file name's ending, else otio.`,
    },
    root: ROOT,
  },
  refuse({ output }) {
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is the name of a plan, and would overwrite it.`,
      );
  },
  async run({ plans, id, file }, { options }, { terminal }) {
    const { output, format } = options;
    const chosen = (format ?? (/\.csv$/i.test(String(output)) ? 'csv' : 'otio')) as TimelineFormat;
    const made = plans.core.timeline(id, chosen);
    if (!made.ok) {
      complain(terminal, `${file}: ${made.why}`);
      return COULD_NOT_RUN;
    }
    const what = chosen === 'csv' ? message`The shot list` : message`The timeline`;
    return writeOutput(terminal, options, what, chosen, made.text);
  },
});
