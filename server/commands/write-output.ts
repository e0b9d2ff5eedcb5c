/** Writes what a command has made, and says so; or says why it could not. */
import path from 'node:path';
import { inertLine } from '../../shared/report/inert.ts';
import { message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import { marked, type OutputKind } from '../files/own-output.ts';
import { placeFile, type Replaceable } from '../files/place-file.ts';
import { NotReplaced } from '../files/replace-file.ts';
import { complain, type Terminal } from '../terminal.ts';
import type { Parsed } from './options.ts';

/**
 * One line on the error stream, so that what is piped stays clean.
 * @param options `output`: the file; left out: standard output, and nothing is said of it. `force`:
 * whatever file is there is replaced; left out: only what Lamella wrote
 * @param what as the sentence has it: "The sheet"
 * @returns the exit status
 */
export async function writeOutput(
  terminal: Terminal,
  { output, force }: Parsed['options'],
  what: string,
  kind: OutputKind,
  content: string | Uint8Array,
): Promise<number> {
  if (typeof output !== 'string') {
    terminal.out(content);
    return NOTHING_FOUND;
  }
  const replaceable = force === true ? 'anything' : kind;
  return place(terminal, output, what, marked(kind, content), replaceable);
}

/** As `writeOutput`, but a file of that name stays as it is, and that is an error. */
export const writeNew = (
  terminal: Terminal,
  output: string,
  what: string,
  text: string,
): Promise<number> => place(terminal, output, what, Buffer.from(text, 'utf8'), 'nothing');

async function place(
  terminal: Terminal,
  output: string,
  what: string,
  bytes: Uint8Array,
  replaceable: Replaceable,
): Promise<number> {
  try {
    await placeFile(path.resolve(terminal.cwd, output), bytes, replaceable);
  } catch (cause) {
    const why = cause instanceof NotReplaced ? cause.message : reasonNotWritten(output, cause);
    complain(terminal, message`${output} can't be written: ${why}.`);
    return COULD_NOT_RUN;
  }
  terminal.err(`${inertLine(message`${what} was written to ${output}.`)}\n`);
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
    case 'EACCES':
    case 'EPERM':
      return message`permission denied`;
    case 'EROFS':
      return message`the disk is read-only`;
    case 'ENOSPC':
    case 'EDQUOT':
      return message`the disk is full`;
    case 'EFBIG':
      return message`the system allows no file of that size`;
    case 'ENAMETOOLONG':
      return message`the path is too long`;
    case 'ELOOP':
      return message`its links lead in a circle`;
    case 'ERR_INVALID_ARG_VALUE':
      return message`the path has a NUL character`;
    default:
      return cause instanceof Error ? cause.message : String(cause);
  }
}
