import { terminalText } from '../../shared/report/document/terminal.ts';
import { print } from '../../shared/report/json.ts';
import { measureDocument } from '../../shared/report/measure-text.ts';
import { later, message } from '../../shared/words/message.ts';
import { NOTHING_FOUND } from '../exit-status.ts';
import { FORMAT, LENGTHS, ROOT } from './command.ts';
import { planCommand } from './open-plan.ts';
import { WrongUse } from './options.ts';

export const measure = planCommand({
  name: 'measure',
  usage: ['lamella measure FILE [--lens NAME] [options]'],
  about: later`Says which ruler measurement of a lens would narrow the figures of the plan's shots most. Shows how to take it, what it will give, and the row to write.`,
  options: {
    lens: {
      value: later`lens's name`,
      shown: 'NAME',
      about: later`Lens to measure. Default: all that shots use.`,
    },
    format: FORMAT,
    root: ROOT,
    lengths: LENGTHS,
  },
  async run({ plans, id, file }, { options }, { terminal }) {
    const lens = options.lens === undefined ? undefined : String(options.lens);
    const advice = plans.core.measure(id, lens);
    if (lens !== undefined && advice.length === 0)
      throw new WrongUse(
        message`No shot of ${file} uses a lens ${lens} whose focal length is known.`,
      );
    terminal.out(
      options.format === 'json'
        ? print({ version: 1, file: plans.nameOf(id), lenses: advice })
        : terminalText(measureDocument(advice, plans.core.measuredWords), terminal.colour),
    );
    return NOTHING_FOUND;
  },
});
