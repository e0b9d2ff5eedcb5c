import path from 'node:path';
import { version } from '../../package.json';
import type { Checker } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { githubReport } from '../../shared/report/github.ts';
import { checkReport } from '../../shared/report/json.ts';
import { sarifReport } from '../../shared/report/sarif.ts';
import { type TextReportFile, textReport } from '../../shared/report/text.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { MOST_BYTES } from '../files/decode.ts';
import { isPlanName, PLAN_SUFFIX, plansNamed } from '../files/plan-files.ts';
import { PlanSet, type PlanSetOptions } from '../files/plan-set.ts';
import { complain, type Terminal } from '../terminal.ts';
import {
  type CheckSurroundings,
  type Command,
  FAIL_ON,
  folderIn,
  LENGTHS,
  lengthsIn,
  ROOT,
  statusOf,
} from './command.ts';
import { diffOf, fixedWords, fixPlans, writeFixed } from './fix-plans.ts';
import { type Parsed, WrongUse } from './options.ts';

export const check: Command<CheckSurroundings> = {
  name: 'check',
  usage: [
    'lamella check [FILE|DIR…] [options]',
    'lamella check --fix [--dry-run] [FILE|DIR…] [options]',
    'lamella check - --stdin-name NAME [options]',
  ],
  about: later`Checks plans and suggests fixes. Given a folder, checks every *.shootplan.yaml in it. Default: the current folder.`,
  options: {
    format: {
      oneOf: ['text', 'json', 'sarif', 'github'],
      about: later`text (default), json, SARIF 2.1.0, or GitHub workflow commands`,
    },
    'fail-on': FAIL_ON,
    root: ROOT,
    lengths: LENGTHS,
    'stdin-name': {
      value: later`file name`,
      shown: 'NAME',
      about: later`File name to assume for standard input. Paths start from its folder.`,
    },
    fix: {
      about: later`Makes fixes without side effects, where a finding has exactly one, in the named files.`,
    },
    'dry-run': {
      about: later`With --fix: prints the changes as a unified diff and writes nothing.`,
    },
  },
  async run(parsed, surroundings) {
    const { terminal } = surroundings;
    mustFit(parsed);
    const plans = await planSet(parsed, surroundings);
    const problems = [...(await addAll(plans, parsed, surroundings))];
    const named = plans.files;
    await plans.follow();
    const isDry = parsed.options['dry-run'] === true;
    if (parsed.options.fix) problems.push(...(await fixNamed(plans, named, isDry, terminal)));
    const files = plans.files.map((file) => ({
      ...reportedFile(plans, file, plans.findings(file)),
      ...(plans.unread(file) === null && { state: plans.core.state(file) }),
    }));
    if (!isDry) terminal.out(report(files, parsed.options.format, surroundings));
    for (const problem of problems) complain(terminal, problem);
    const found = files.flatMap(({ findings }) => findings.map(({ finding }) => finding));
    return problems.length > 0 ? COULD_NOT_RUN : statusOf(found, parsed.options);
  },
};

/** Whether the options go with each other. */
function mustFit({ options, rest }: Parsed): void {
  const isDry = options['dry-run'] === true;
  if (isDry && !options.fix) throw new WrongUse(message`--dry-run goes with --fix.`);
  if (isDry && options.format !== undefined)
    throw new WrongUse(message`--dry-run prints a diff; it takes no --format.`);
  if (options.fix && !isDry && rest.includes('-'))
    throw new WrongUse(
      message`--fix can't write to standard input; add --dry-run to print the changes.`,
    );
}

/** @returns what could not be written; the diff of a dry run is the output, all else is said beside it */
async function fixNamed(
  plans: PlanSet<Checker>,
  named: readonly FileId[],
  isDry: boolean,
  terminal: Terminal,
): Promise<readonly string[]> {
  const fixed = await fixPlans(plans, named);
  const written = isDry ? { ...fixed, problems: [] } : await writeFixed(plans, fixed);
  if (isDry) terminal.out(diffOf(plans, fixed));
  terminal.err(fixedWords(written, isDry));
  return written.problems;
}

/** A file with what was found in it, as reports take it. */
export const reportedFile = (
  plans: PlanSet<Checker>,
  file: FileId,
  findings: TextReportFile['findings'],
): TextReportFile => ({
  name: plans.nameOf(file),
  findings,
  line: (index) => plans.core.line(file, index),
  nameOf: (other) => plans.nameOf(other),
});

function report(
  files: readonly TextReportFile[],
  format: string | true | undefined,
  { terminal, rules }: CheckSurroundings,
): string {
  if (format === 'json') return checkReport(files);
  if (format === 'sarif') return sarifReport(files, rules, version);
  if (format === 'github') return githubReport(files);
  return files.length > 0 ? textReport(files, terminal.colour) : '';
}

/** A set of plans as the options of a command ask for it. */
export async function planSet<C extends Checker>(
  parsed: Parsed,
  { terminal, createCore }: CheckSurroundings<C>,
  read?: PlanSetOptions['read'],
): Promise<PlanSet<C>> {
  const { options } = parsed;
  if (options.lengths && options.format === 'json')
    throw new WrongUse(message`--lengths goes with --format text; JSON is always in millimetres.`);
  const root = await folderIn(terminal, 'root', parsed);
  return new PlanSet({
    cwd: terminal.cwd,
    createCore,
    ...(read && { read }),
    ...(root !== null && { root }),
    lengths: lengthsIn(options),
  });
}

/** Adds what was named, or standard input; answers with what could not be added. */
async function addAll(
  plans: PlanSet<Checker>,
  { options, rest }: Parsed,
  { terminal }: CheckSurroundings,
): Promise<readonly string[]> {
  const name = options['stdin-name'];
  if (rest.includes('-')) {
    if (rest.length > 1)
      throw new WrongUse(message`"-" is standard input, and goes with no other file.`);
    if (typeof name !== 'string')
      throw new WrongUse(
        message`"-" is standard input; --stdin-name NAME says which file it stands for.`,
      );
    if (!isPlanName(name))
      throw new WrongUse(
        message`--stdin-name ${name}: not a plan; plans are named *${PLAN_SUFFIX}.`,
      );
    plans.addText(path.resolve(terminal.cwd, name), await terminal.input(MOST_BYTES));
    return [];
  }
  if (name !== undefined) throw new WrongUse(message`--stdin-name goes with "-", standard input.`);
  const { files, problems } = await plansNamed(rest.length > 0 ? rest : ['.'], terminal.cwd);
  const unread = await Promise.all(files.map((file) => plans.add(file)));
  return [...problems, ...unread.filter((problem) => problem !== null)];
}
