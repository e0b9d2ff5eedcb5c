/** Writes what a command has made, and says so; or says why it could not. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import type { Terminal } from '../terminal.ts';

/**
 * One line on the error stream, so that what is piped stays clean.
 * @param output the file; left out: standard output, and nothing is said of it
 * @param what as the sentence has it: "The sheet"
 * @param keep a file of that name stays as it is, and that is an error
 * @returns the exit status
 */
export async function writeOutput(
  terminal: Terminal,
  output: string | true | undefined,
  what: string,
  text: string | Uint8Array,
  keep = false,
): Promise<number> {
  if (typeof output !== 'string') {
    terminal.out(text);
    return NOTHING_FOUND;
  }
  try {
    // `wx`: fails where there is a file already, with nothing in between.
    await writeFile(path.resolve(terminal.cwd, output), text, { flag: keep ? 'wx' : 'w' });
  } catch (cause) {
    terminal.err(
      `lamella: ${message`${output} can't be written: ${reasonNotWritten(output, cause)}.`}\n`,
    );
    return COULD_NOT_RUN;
  }
  terminal.err(`${message`${what} was written to ${output}.`}\n`);
  return NOTHING_FOUND;
}

/** Why a file can't be written, in words. */
export function reasonNotWritten(output: string, cause: unknown): string {
  switch ((cause as NodeJS.ErrnoException).code) {
    case 'ENOENT':
      return message`there is no folder ${path.dirname(output)}`;
    case 'ENOTDIR':
      return message`${path.dirname(output)} is not a folder`;
    case 'EISDIR':
      return message`it is a folder`;
    case 'EEXIST':
      return message`it already exists and was not overwritten`;
    case 'EACCES':
    case 'EPERM':
      return message`permission denied`;
    case 'EROFS':
      return message`the disk is read-only`;
    case 'ENOSPC':
      return message`the disk is full`;
    default:
      return cause instanceof Error ? cause.message : String(cause);
  }
}
