/** `lamella`: finds the command and runs it. */
import { version } from '../package.json';
import { message } from '../shared/words/message.ts';
import { bringBack } from './commands/bring-back.ts';
import { bugReport } from './commands/bug-report.ts';
import { check } from './commands/check.ts';
import { clips } from './commands/clips.ts';
import type { Command, Surroundings } from './commands/command.ts';
import { compare } from './commands/compare.ts';
import { explain } from './commands/explain.ts';
import { figures } from './commands/figures.ts';
import { format } from './commands/format.ts';
import { frame } from './commands/frame.ts';
import { overview } from './commands/help.ts';
import { measure } from './commands/measure.ts';
import { newCommand } from './commands/new.ts';
import { nearest, WrongUse } from './commands/options.ts';
import { sheet } from './commands/sheet.ts';
import { solve } from './commands/solve.ts';
import { timeline } from './commands/timeline.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from './exit-status.ts';
import { guarded, isHelp, runCommand } from './run-command.ts';

/** All of them, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  check,
  format,
  figures,
  sheet,
  frame,
  timeline,
  compare,
  clips,
  bringBack,
  explain,
  bugReport,
  solve,
  measure,
  newCommand,
];

/** @returns the exit status: 0 nothing found, 1 findings, 2 could not run */
export async function runCommandLine(
  args: readonly string[],
  surroundings: Surroundings,
): Promise<number> {
  const [first, ...rest] = args;
  const command = COMMANDS.find(({ name }) => name === first);
  return command
    ? runCommand(command, rest, surroundings)
    : guarded(surroundings, null, async () => withoutCommand(first, surroundings));
}

function withoutCommand(first: string | undefined, { terminal }: Surroundings): number {
  if (first === undefined) {
    terminal.err(overview(COMMANDS));
    return COULD_NOT_RUN;
  }
  if (first === '--version' || first === '-V') {
    terminal.out(`${version}\n`);
    return NOTHING_FOUND;
  }
  if (isHelp(first)) {
    terminal.out(overview(COMMANDS));
    return NOTHING_FOUND;
  }
  const near = nearest(
    first,
    COMMANDS.map(({ name }) => name),
  );
  throw new WrongUse(
    message`There is no command "${first}".${near ? message` Did you mean ${near}?` : ''}`,
  );
}
