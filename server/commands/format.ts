/** `lamella format`: lays plans out, or says which ones are not laid out. */
import path from 'node:path';
import { formatted } from '../../shared/format/format.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { decode, MOST_BYTES } from '../files/decode.ts';
import { plansNamed } from '../files/plan-files.ts';
import { PlanSet } from '../files/plan-set.ts';
import { NotReplaced, replaceFile } from '../files/replace-file.ts';
import { pathOfUri } from '../files/uri.ts';
import type { Terminal } from '../terminal.ts';
import { type Command, folderIn, ROOT, type Surroundings } from './command.ts';
import { type Parsed, WrongUse } from './options.ts';
import { reasonNotWritten } from './write-output.ts';

type Options = Parameters<typeof formatted>[1];

export const format: Command = {
  name: 'format',
  usage: ['lamella format [FILE|DIR…] [options]', 'lamella format - [options]'],
  about: later`Sets indentation and blanks in plans; comments and values stay. Standard input is printed. Default: the current folder.`,
  options: {
    check: {
      about: later`Writes nothing. Lists plans that would change; then the exit status is 1.`,
    },
    align: {
      oneOf: ['tidy', 'keep'],
      about: later`tidy (default) leaves one blank between values; keep leaves columns that you aligned.`,
    },
    root: ROOT,
  },
  async run(parsed, surroundings) {
    const { terminal } = surroundings;
    const isCheck = parsed.options.check === true;
    const options = { align: parsed.options.align === 'keep' ? 'keep' : 'tidy' } as const;
    if (parsed.rest.includes('-')) return formatInput(parsed, terminal, options, isCheck);
    const { plans, problems } = await read(parsed, surroundings);
    let changed = 0;
    for (const file of plans.files) {
      const before = plans.text(file);
      const name = plans.nameOf(file);
      if (before === null) {
        problems.push(message`${name} can't be read as text, or is too large.`);
        continue;
      }
      const after = formatted(before, options);
      if (after === before) continue;
      const why = isCheck
        ? null
        : await write(pathOfUri(file) ?? '', plans.rootOf(file), name, before, after);
      if (why !== null) problems.push(message`${name} can't be written: ${why}.`);
      else {
        changed++;
        terminal.out(`${inertLine(name)}\n`);
      }
    }
    for (const problem of problems) terminal.err(`lamella: ${inertLine(problem)}\n`);
    terminal.err(`${summary(changed, isCheck)}\n`);
    if (problems.length > 0) return COULD_NOT_RUN;
    return isCheck && changed > 0 ? FOUND : NOTHING_FOUND;
  },
};

async function read(parsed: Parsed, { terminal, createCore }: Surroundings) {
  const root = await folderIn(terminal, 'root', parsed);
  const plans = new PlanSet({ cwd: terminal.cwd, createCore, ...(root !== null && { root }) });
  const named = await plansNamed(parsed.rest.length > 0 ? parsed.rest : ['.'], terminal.cwd);
  const unread = await Promise.all(named.files.map((file) => plans.add(path.resolve(file))));
  return { plans, problems: [...named.problems, ...unread.filter((problem) => problem !== null)] };
}

/** @returns why it can't be written; null: it is */
async function write(
  file: string,
  root: string,
  name: string,
  before: string,
  after: string,
): Promise<string | null> {
  try {
    await replaceFile(file, root, before, after);
    return null;
  } catch (cause) {
    return cause instanceof NotReplaced ? cause.message : reasonNotWritten(name, cause);
  }
}

async function formatInput(
  { rest }: Parsed,
  terminal: Terminal,
  options: Options,
  isCheck: boolean,
): Promise<number> {
  if (rest.length > 1)
    throw new WrongUse(message`"-" is standard input, and goes with no other file.`);
  const bytes = await terminal.input(MOST_BYTES);
  const decoded = bytes.length > MOST_BYTES ? null : decode(bytes);
  if (!decoded?.ok) {
    terminal.err(`lamella: ${message`Standard input can't be read as text, or is too large.`}\n`);
    return COULD_NOT_RUN;
  }
  const after = formatted(decoded.text, options);
  if (!isCheck) terminal.out(after);
  return isCheck && after !== decoded.text ? FOUND : NOTHING_FOUND;
}

function summary(count: number, isCheck: boolean): string {
  if (count === 0) return message`Nothing to format.`;
  if (isCheck)
    return count === 1
      ? message`${count} plan would change.`
      : message`${count} plans would change.`;
  return count === 1
    ? message`${count} plan is formatted.`
    : message`${count} plans are formatted.`;
}
