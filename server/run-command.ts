/** Runs one command of `lamella`; wrong use and failures become exit statuses. */

import { inertLine } from '../shared/report/inert.ts';
import { message } from '../shared/words/message.ts';
import type { CheckSurroundings, Command } from './commands/command.ts';
import { helpOf } from './commands/help.ts';
import { parseOptions, WrongUse } from './commands/options.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from './exit-status.ts';
import { useTranslationFile } from './files/translation-file.ts';
import { complain, NoInput } from './terminal.ts';

/** @returns the exit status: 0 nothing found, 1 findings, 2 could not run */
export const runCommand = <S extends CheckSurroundings>(
  command: Command<S>,
  args: readonly string[],
  surroundings: S,
): Promise<number> =>
  guarded(surroundings, command.name, async () => {
    const end = args.indexOf('--');
    if (args.slice(0, end < 0 ? undefined : end).some(isHelp)) {
      surroundings.terminal.out(helpOf(command));
      return NOTHING_FOUND;
    }
    return command.run(parseOptions(args, command.options), surroundings);
  });

/** @param command whose help is named where it was called wrongly; null: no one's */
export async function guarded(
  { terminal }: Pick<CheckSurroundings, 'terminal'>,
  command: string | null,
  run: () => Promise<number>,
): Promise<number> {
  try {
    const { translation, cwd } = terminal;
    for (const refused of translation ? useTranslationFile(translation, cwd) : [])
      complain(terminal, refused);
    return await run();
  } catch (cause) {
    if (cause instanceof WrongUse) {
      complain(terminal, cause.message);
      terminal.err(`${message`See: lamella ${command === null ? '' : `${command} `}--help`}\n`);
    } else if (cause instanceof NoInput) complain(terminal, cause.message);
    else {
      const said = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
      complain(terminal, message`failed. This is a bug in Lamella, not in your plan.`);
      for (const line of said.split('\n')) terminal.err(`${inertLine(line)}\n`);
    }
    return COULD_NOT_RUN;
  }
}

export const isHelp = (argument: string): boolean => argument === '--help' || argument === '-h';
