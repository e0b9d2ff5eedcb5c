import { version } from '../../package.json';
import { later } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import { reportOf } from '../report.ts';
import { type Command, ROOT_HELP } from './command.ts';
import { openPlan } from './open-plan.ts';
import { parseOptions } from './options.ts';

export const report: Command = {
  name: 'report',
  usage: ['lamella report FILE'],
  about: later`Prints a plan for a bug report: names, texts, comments and paths replaced by others of the same length, and what is found in it then.`,
  options: [ROOT_HELP],
  async run(args, surroundings) {
    const parsed = parseOptions(args, { root: { value: later`folder` } });
    const opened = await openPlan('report', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id } = opened;
    const facts = [
      `Lamella ${version}, command line`,
      `Node ${process.version}, ${process.platform} ${process.arch}`,
    ];
    surroundings.terminal.out(reportOf(plans.core, surroundings.createCore, id, facts) ?? '');
    return NOTHING_FOUND;
  },
};
