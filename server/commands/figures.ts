import { terminalText } from '../../shared/report/document/terminal.ts';
import { figuresDocument } from '../../shared/report/figures-text.ts';
import { figuresReport } from '../../shared/report/json.ts';
import { later } from '../../shared/words/message.ts';
import { NOTHING_FOUND } from '../exit-status.ts';
import { FORMAT, LENGTHS, ROOT, sayIn } from './command.ts';
import { planCommand, shotOf } from './open-plan.ts';

export const figures = planCommand({
  name: 'figures',
  usage: ['lamella figures FILE [--shot NAME] [options]'],
  about: later`Prints the calculated values for every shot and for the edit, and why any value is missing.`,
  options: {
    shot: {
      value: later`shot's name`,
      shown: 'NAME',
      about: later`Shot to print. Default: all shots.`,
    },
    format: FORMAT,
    root: ROOT,
    lengths: LENGTHS,
  },
  async run(opened, { options }, { terminal }) {
    const { plans, id } = opened;
    const all = plans.core.figures(id);
    // Of one shot alone the sums of the plan say nothing.
    const isWhole = options.shot === undefined;
    const one = isWhole ? '' : shotOf(opened, String(options.shot));
    const shots = isWhole ? all : new Map([[one, all.get(one)!]]);
    const recording = isWhole ? plans.core.recording(id) : [];
    const edit = isWhole ? plans.core.editFigures(id) : null;
    const day = isWhole ? plans.core.dayFigures(id) : null;
    const said = [plans.nameOf(id), shots, recording, edit, day] as const;
    terminal.out(
      options.format === 'json'
        ? figuresReport(...said)
        : terminalText(figuresDocument(...said, sayIn(options)), terminal.colour),
    );
    return NOTHING_FOUND;
  },
});
