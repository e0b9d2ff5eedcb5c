/** `lamella`: finds the command, runs it, and turns wrong use and failures into exit statuses. */
import { version } from '../package.json';
import { check } from './commands/check.ts';
import {
  COULD_NOT_RUN,
  type Command,
  NOTHING_FOUND,
  type Surroundings,
} from './commands/command.ts';
import { compare } from './commands/compare.ts';
import { explain } from './commands/explain.ts';
import { figures } from './commands/figures.ts';
import { helpOf, overview } from './commands/help.ts';
import { newCommand } from './commands/new.ts';
import { nearest, WrongUse } from './commands/options.ts';
import { report } from './commands/report.ts';
import { settle } from './commands/settle.ts';
import { sheet } from './commands/sheet.ts';
import { timeline } from './commands/timeline.ts';
import { verify } from './commands/verify.ts';

const COMMANDS: readonly Command[] = [
  check,
  figures,
  sheet,
  timeline,
  compare,
  verify,
  explain,
  report,
  settle,
  newCommand,
];

/** @returns the exit status: 0 nothing found, 1 findings, 2 could not run */
export async function runCommandLine(
  args: readonly string[],
  surroundings: Surroundings,
): Promise<number> {
  const { terminal } = surroundings;
  try {
    return await dispatch(args, surroundings);
  } catch (cause) {
    if (cause instanceof WrongUse) {
      const command = COMMANDS.find(({ name }) => name === args[0]);
      terminal.err(
        `lamella: ${cause.message}\nSee: lamella ${command ? `${command.name} ` : ''}--help\n`,
      );
    } else {
      const said = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
      terminal.err(`lamella: failed; this is a defect of Lamella, not of the plan.\n${said}\n`);
    }
    return COULD_NOT_RUN;
  }
}

async function dispatch(args: readonly string[], surroundings: Surroundings): Promise<number> {
  const { terminal } = surroundings;
  const [first, ...rest] = args;
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
  const command = COMMANDS.find(({ name }) => name === first);
  if (!command) {
    const near = nearest(
      first,
      COMMANDS.map(({ name }) => name),
    );
    throw new WrongUse(`There is no command "${first}".${near ? ` Did you mean ${near}?` : ''}`);
  }
  const end = rest.indexOf('--');
  if (rest.slice(0, end < 0 ? undefined : end).some(isHelp)) {
    terminal.out(helpOf(command));
    return NOTHING_FOUND;
  }
  return command.run(rest, surroundings);
}

const isHelp = (argument: string): boolean => argument === '--help' || argument === '-h';
