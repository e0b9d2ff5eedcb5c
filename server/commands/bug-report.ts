import { version } from '../../package.json';
import { later } from '../../shared/words/message.ts';
import { reportOf } from '../report.ts';
import { NOTHING_FOUND, ROOT } from './command.ts';
import { planCommand } from './open-plan.ts';

export const bugReport = planCommand({
  name: 'bug-report',
  usage: ['lamella bug-report FILE'],
  about: later`Prints a plan for a bug report: names, texts, comments and paths replaced by others of the same length, and what is found in it then.`,
  options: { root: ROOT },
  async run({ plans, id }, _, { terminal, createCore }) {
    const facts = [
      `Lamella ${version}, command line`,
      `Node ${process.version}, ${process.platform} ${process.arch}`,
    ];
    terminal.out(reportOf(plans.core, createCore, id, facts) ?? '');
    return NOTHING_FOUND;
  },
});
