/** `lamella bring-back`: lays a filled-in sheet or a review into its plan, after showing what that changes. */
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { readBack } from '../../shared/bring-back/read-back.ts';
import { MOST_CHARACTERS } from '../../shared/bring-back/read-parts.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { decode } from '../files/decode.ts';
import { NotReplaced, replaceFile } from '../files/replace-file.ts';
import { pathOfUri } from '../files/uri.ts';
import { patchOf } from '../patch.ts';
import { complain, type Terminal } from '../terminal.ts';
import { type Command, ROOT } from './command.ts';
import { openNamed } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { reasonNotWritten } from './write-output.ts';

type Given = Extract<ReturnType<typeof readBack>, { ok: true }>;

/** UTF-8 takes at most this many bytes for a UTF-16 unit. */
const MOST_BYTES = 3 * MOST_CHARACTERS;

export const bringBack: Command = {
  name: 'bring-back',
  usage: ['lamella bring-back DAY PLAN [options]', 'lamella bring-back REVIEW PLAN [options]'],
  about: later`Brings the text of a filled-in sheet or of a review into the plan. Prints the changes as a diff; --write makes them.`,
  options: {
    write: { about: later`Writes the plan instead of printing the diff.` },
    root: ROOT,
  },
  async run(parsed, surroundings) {
    const { rest, options } = parsed;
    const { terminal } = surroundings;
    const [givenFile, planFile] = rest;
    if (givenFile === undefined || planFile === undefined || rest.length > 2)
      throw new WrongUse(
        message`bring-back takes a day or a review, and a plan, but got ${rest.length}.`,
      );
    const given = await openGiven(givenFile, terminal);
    if (given === null) return COULD_NOT_RUN;
    const opened = await openNamed(planFile, parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id } = opened;
    const name = plans.nameOf(id);
    const before = plans.text(id) ?? '';
    const file = pathOfUri(id) ?? '';
    const brought = given.lay(before, path.basename(file));
    if (brought === null) {
      complain(terminal, message`${name} has errors in its text. Fix them first.`);
      return COULD_NOT_RUN;
    }
    const { text, done, left } = brought;
    if (options.write === true && text !== before) {
      try {
        await replaceFile(file, plans.rootOf(id), before, text);
      } catch (cause) {
        const why = cause instanceof NotReplaced ? cause.message : reasonNotWritten(name, cause);
        complain(terminal, message`${name} can't be written: ${why}.`);
        return COULD_NOT_RUN;
      }
    } else if (text !== before) terminal.out(patchOf(name, before, text));
    const summary =
      text === before
        ? message`Nothing to bring back.`
        : options.write === true
          ? message`${name} is written.`
          : message`Nothing was written; --write makes the changes.`;
    for (const line of [...done, ...left, summary]) terminal.err(`${inertLine(line)}\n`);
    return left.length > 0 ? FOUND : NOTHING_FOUND;
  },
};

/** @returns null where it can't be read, which has been said */
async function openGiven(file: string, terminal: Terminal): Promise<Given | null> {
  const refuse = (why: string): null => {
    complain(terminal, `${file}: ${why}`);
    return null;
  };
  const bytes = await bytesOf(file, terminal);
  if (typeof bytes === 'string') return refuse(bytes);
  if (bytes.length > MOST_BYTES) return refuse(message`it is too large`);
  const decoded = decode(bytes);
  if (!decoded.ok) return refuse(message`it is not UTF-8`);
  const read = readBack(decoded.text);
  return read.ok ? read : refuse(read.why);
}

/** `-` is standard input. @returns why it can't be read, where it can't */
async function bytesOf(file: string, terminal: Terminal): Promise<Uint8Array | string> {
  if (file === '-') return terminal.input(MOST_BYTES);
  try {
    const named = path.resolve(terminal.cwd, file);
    const found = await stat(named);
    if (!found.isFile()) return message`not a file`;
    if (found.size > MOST_BYTES) return message`it is too large`;
    return await readFile(named);
  } catch (cause) {
    return (cause as NodeJS.ErrnoException).code === 'ENOENT'
      ? message`no such file`
      : message`it can't be read`;
  }
}
