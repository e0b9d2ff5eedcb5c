import { print } from '../../shared/report/json.ts';
import { settledText } from '../../shared/report/settle-text.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import type { Command } from './command.ts';
import { openPlan } from './open-plan.ts';
import { noSuchShot, parseOptions, WrongUse } from './options.ts';
import { SHOT_OPTIONS, shotHelp } from './shot-options.ts';

export const settle: Command = {
  name: 'settle',
  usage: ['lamella settle FILE --shot NAME [options]'],
  about: later`Looks for the least change of aperture, shutter, ISO, tilt and light that clears a shot, with the reason for each; where there is none, says which demands exclude each other. Changes nothing.`,
  options: shotHelp(later`The shot.`),
  async run(args, surroundings) {
    const parsed = parseOptions(args, SHOT_OPTIONS);
    const { terminal } = surroundings;
    const { shot, format } = parsed.options;
    if (typeof shot !== 'string') throw new WrongUse(message`settle needs --shot NAME.`);
    const opened = await openPlan('settle', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id, file } = opened;
    const names = [...plans.core.figures(id).keys()];
    if (!names.includes(shot)) throw noSuchShot(shot, names, file);
    const settled = plans.core.settle(id, shot);
    if (settled === null) {
      terminal.err(`lamella: ${message`${shot} can't be read; see: lamella check ${file}`}\n`);
      return COULD_NOT_RUN;
    }
    const { edits: _, ...said } = settled;
    terminal.out(
      format === 'json'
        ? print({ version: 1, file: plans.nameOf(id), ...said })
        : settledText(settled, terminal.colour),
    );
    return settled.outcome === 'no-way' ? FOUND : NOTHING_FOUND;
  },
};
