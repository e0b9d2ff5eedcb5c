import { print } from '../../shared/report/json.ts';
import { settledText } from '../../shared/report/settle-text.ts';
import { later, message } from '../../shared/words/message.ts';
import {
  COULD_NOT_RUN,
  type Command,
  FORMAT_HELP,
  FORMATS,
  FOUND,
  LENGTHS,
  LENGTHS_HELP,
  NOTHING_FOUND,
  ROOT_HELP,
} from './command.ts';
import { openPlan } from './open-plan.ts';
import { noSuchShot, parseOptions, WrongUse } from './options.ts';

const OPTIONS = {
  shot: { value: later`shot’s name` },
  format: { oneOf: FORMATS },
  root: { value: later`folder` },
  lengths: { oneOf: LENGTHS },
};

export const settle: Command = {
  name: 'settle',
  usage: ['lamella settle FILE --shot NAME [options]'],
  about: later`Looks for the least change of aperture, shutter, ISO, tilt and light that clears a shot, with the reason for each; where there is none, says which demands exclude each other. Changes nothing.`,
  options: [['--shot NAME', later`The shot.`], FORMAT_HELP, ROOT_HELP, LENGTHS_HELP],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
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
