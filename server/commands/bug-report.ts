import { version } from '../../package.json';
import { later } from '../../shared/words/message.ts';
import { NOTHING_FOUND } from '../exit-status.ts';
import { reportOf } from '../report.ts';
import { ROOT } from './command.ts';
import { planCommand } from './open-plan.ts';

export const bugReport = planCommand({
  name: 'bug-report',
  usage: ['lamella bug-report FILE'],
  about: later`Prints an anonymised copy of the plan for a bug report, with its findings. Names, text, comments and paths are replaced.`,
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
