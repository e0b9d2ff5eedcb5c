import { terminalText } from '../../shared/report/document/terminal.ts';
import { print } from '../../shared/report/json.ts';
import { solvedDocument } from '../../shared/report/solve-text.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { complain } from '../terminal.ts';
import { FORMAT, LENGTHS, ROOT } from './command.ts';
import { planCommand, shotOf } from './open-plan.ts';
import { WrongUse } from './options.ts';

export const solve = planCommand({
  name: 'solve',
  usage: ['lamella solve FILE --shot NAME [options]'],
  about: later`Finds the smallest change to aperture, shutter, ISO, tilt or lighting that clears a shot's errors and warnings, and explains each change. If there is none, shows which requirements conflict. Never edits the plan.`,
  options: {
    shot: { value: later`shot's name`, shown: 'NAME', about: later`Shot to solve.` },
    format: FORMAT,
    root: ROOT,
    lengths: LENGTHS,
  },
  refuse({ shot }) {
    if (typeof shot !== 'string') throw new WrongUse(message`solve needs --shot NAME.`);
  },
  async run(opened, { options }, { terminal }) {
    const { plans, id, file } = opened;
    const shot = shotOf(opened, String(options.shot));
    const solved = plans.core.solve(id, shot);
    if (solved === null) {
      complain(terminal, message`${shot} can't be read; see: lamella check ${file}`);
      return COULD_NOT_RUN;
    }
    const { edits: _, ...rest } = solved;
    const said = { ...rest, changes: rest.changes.map(({ edits: _own, ...change }) => change) };
    terminal.out(
      options.format === 'json'
        ? print({ version: 1, file: plans.nameOf(id), ...said })
        : terminalText(solvedDocument(solved), terminal.colour),
    );
    return solved.outcome === 'no-way' || solved.outcome === 'not-found' ? FOUND : NOTHING_FOUND;
  },
});
