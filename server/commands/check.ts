import { stat } from 'node:fs/promises';
import path from 'node:path';
import { version } from '../../package.json';
import type { Checker } from '../../shared/api/facade.ts';
import { githubReport } from '../../shared/report/github.ts';
import { checkReport } from '../../shared/report/json.ts';
import { sarifReport } from '../../shared/report/sarif.ts';
import { type TextReportFile, textReport } from '../../shared/report/text.ts';
import { SEVERITIES, type Severity } from '../../shared/rules/rule.ts';
import type { LengthUnit } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { MOST_BYTES } from '../files/decode.ts';
import { isPlanName, PLAN_SUFFIX, plansNamed } from '../files/plan-files.ts';
import { PlanSet, type PlanSetOptions } from '../files/plan-set.ts';
import {
  type CheckSurroundings,
  type Command,
  FORMATS,
  LENGTHS,
  LENGTHS_HELP,
  ROOT_HELP,
} from './command.ts';
import { type Parsed, parseOptions, WrongUse } from './options.ts';

export const BARS = ['error', 'warning', 'information'] as const satisfies readonly Severity[];

/** For people, for programs, for services that gather findings, for a workflow's remarks. */
const CHECK_FORMATS = [...FORMATS, 'sarif', 'github'] as const;

const OPTIONS = {
  format: { oneOf: CHECK_FORMATS },
  'fail-on': { oneOf: BARS },
  root: { value: later`folder` },
  lengths: { oneOf: LENGTHS },
  'stdin-name': { value: later`file name` },
};

export const check: Command<CheckSurroundings> = {
  name: 'check',
  usage: ['lamella check [FILE|DIR…] [options]', 'lamella check - --stdin-name NAME [options]'],
  about: later`Says what will not work in plans, and what to do. A folder stands for every *.shootplan.yaml below it; without arguments, the current folder.`,
  options: [
    [
      '--format text|json|sarif|github',
      later`For people (default), for programs, as SARIF 2.1.0, or as GitHub’s workflow commands.`,
    ],
    [
      '--fail-on error|warning|information',
      later`The least severe finding that makes the exit status 1; default error.`,
    ],
    ROOT_HELP,
    LENGTHS_HELP,
    ['--stdin-name NAME', later`The file that standard input stands for; paths start from there.`],
  ],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { terminal } = surroundings;
    const plans = await planSet(parsed, surroundings);
    const problems = await addAll(plans, parsed, surroundings);
    await plans.follow();
    const files = plans.files.map((file) => ({
      name: plans.nameOf(file),
      findings: plans.findings(file),
      line: (index: number) => plans.core.line(file, index),
      nameOf: (other: string) => plans.nameOf(other),
    }));
    terminal.out(report(files, parsed.options.format, surroundings));
    for (const problem of problems) terminal.err(`lamella: ${problem}\n`);
    if (problems.length > 0) return COULD_NOT_RUN;
    const bar = SEVERITIES.indexOf((parsed.options['fail-on'] as Severity | undefined) ?? 'error');
    const over = files.some(({ findings }) =>
      findings.some(({ finding }) => SEVERITIES.indexOf(finding.severity) <= bar),
    );
    return over ? FOUND : NOTHING_FOUND;
  },
};

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
  { options }: Parsed,
  { terminal, createCore }: CheckSurroundings<C>,
  read?: PlanSetOptions['read'],
): Promise<PlanSet<C>> {
  if (options.lengths && options.format === 'json')
    throw new WrongUse(message`--lengths goes with --format text; JSON is always in millimetres.`);
  const root = typeof options.root === 'string' ? path.resolve(terminal.cwd, options.root) : null;
  if (root !== null && !(await isFolder(root)))
    throw new WrongUse(message`--root ${String(options.root)}: no such folder.`);
  return new PlanSet({
    cwd: terminal.cwd,
    createCore,
    ...(read && { read }),
    ...(root !== null && { root }),
    ...(options.lengths && { lengths: options.lengths as LengthUnit }),
  });
}

const isFolder = async (at: string): Promise<boolean> => {
  try {
    return (await stat(at)).isDirectory();
  } catch {
    return false;
  }
};

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
