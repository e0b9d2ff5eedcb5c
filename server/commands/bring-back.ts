/** `lamella bring-back`: lays a filled-in sheet into its plan, after showing what that changes. */
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { bringBack as bring } from '../../shared/bring-back/bring.ts';
import type { Day } from '../../shared/bring-back/day.ts';
import { propose, proposedWords } from '../../shared/bring-back/propose.ts';
import { MOST_CHARACTERS, readDay } from '../../shared/bring-back/read.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { decode } from '../files/decode.ts';
import { NotReplaced, replaceFile } from '../files/replace-file.ts';
import { pathOfUri } from '../files/uri.ts';
import { patchOf } from '../patch.ts';
import type { Terminal } from '../terminal.ts';
import { type Command, ROOT } from './command.ts';
import { openNamed } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { reasonNotWritten } from './write-output.ts';

/** UTF-8 takes at most this many bytes for a UTF-16 unit. */
const MOST_BYTES = 3 * MOST_CHARACTERS;

export const bringBack: Command = {
  name: 'bring-back',
  usage: ['lamella bring-back DAY PLAN [options]'],
  about: later`Brings the text of a filled-in sheet into the plan: checks, takes and measurements. Prints the changes as a diff; --write makes them.`,
  options: {
    write: { about: later`Writes the plan instead of printing the diff.` },
    propose: {
      about: later`Also proposes what the day shows: a body's \`bench\` row from exposures found, a subject's lifetime from those counted.`,
    },
    root: ROOT,
  },
  async run(parsed, surroundings) {
    const { rest, options } = parsed;
    const { terminal } = surroundings;
    const [dayFile, planFile] = rest;
    if (dayFile === undefined || planFile === undefined || rest.length > 2)
      throw new WrongUse(message`bring-back takes a day and a plan, but got ${rest.length}.`);
    const day = await openDay(dayFile, terminal);
    if (day === null) return COULD_NOT_RUN;
    const opened = await openNamed(planFile, parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id } = opened;
    const name = plans.nameOf(id);
    const before = plans.text(id) ?? '';
    const file = pathOfUri(id) ?? '';
    const brought = bring(day, before, path.basename(file));
    if (brought === null) {
      terminal.err(`lamella: ${message`${name} has errors in its text. Fix them first.`}\n`);
      return COULD_NOT_RUN;
    }
    const proposed = propose(day, brought.text);
    const asked = options.propose === true ? proposed : null;
    const text = asked?.text ?? brought.text;
    if (options.write === true && text !== before) {
      try {
        await replaceFile(file, plans.rootOf(id), before, text);
      } catch (cause) {
        const why = cause instanceof NotReplaced ? cause.message : reasonNotWritten(name, cause);
        terminal.err(`lamella: ${message`${name} can't be written: ${why}.`}\n`);
        return COULD_NOT_RUN;
      }
    }
    // A part of its own, which a reader may apply or leave.
    else
      for (const [from, to] of [
        [before, brought.text],
        [brought.text, text],
      ] as const)
        if (from !== to) terminal.out(patchOf(name, from, to));
    const summary =
      text === before
        ? message`Nothing to bring back.`
        : options.write === true
          ? message`${name} is written.`
          : message`Nothing was written; --write makes the changes.`;
    const waiting =
      asked === null && proposed !== null && proposed.text !== brought.text
        ? [message`The day also shows something of body or subject; --propose shows it.`]
        : [];
    const { done, kept, left } = brought;
    const told = [...done, ...kept, ...left];
    if (asked) told.push(...asked.done.map(proposedWords), ...asked.kept, ...asked.left);
    for (const line of [...told, ...waiting, summary]) terminal.err(`${inertLine(line)}\n`);
    return left.length + (asked?.left.length ?? 0) > 0 ? FOUND : NOTHING_FOUND;
  },
};

/** @returns null where it can't be read, which has been said */
async function openDay(file: string, terminal: Terminal): Promise<Day | null> {
  const refuse = (why: string): null => {
    terminal.err(`lamella: ${inertLine(`${file}: ${why}`)}\n`);
    return null;
  };
  const bytes = await bytesOf(file, terminal);
  if (typeof bytes === 'string') return refuse(bytes);
  if (bytes.length > MOST_BYTES) return refuse(message`it is too large for a day`);
  const decoded = decode(bytes);
  if (!decoded.ok) return refuse(message`it is not UTF-8`);
  const read = readDay(decoded.text);
  return read.ok ? read.day : refuse(read.why);
}

/** `-` is standard input. @returns why it can't be read, where it can't */
async function bytesOf(file: string, terminal: Terminal): Promise<Uint8Array | string> {
  if (file === '-') return terminal.input(MOST_BYTES);
  try {
    const named = path.resolve(terminal.cwd, file);
    const found = await stat(named);
    if (!found.isFile()) return message`not a file`;
    if (found.size > MOST_BYTES) return message`it is too large for a day`;
    return await readFile(named);
  } catch (cause) {
    return (cause as NodeJS.ErrnoException).code === 'ENOENT'
      ? message`no such file`
      : message`it can't be read`;
  }
}
