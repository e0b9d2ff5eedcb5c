import path from 'node:path';
import type { ComparedFinding, Comparison } from '../../shared/api/compared.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonMarkdown } from '../../shared/report/compare/markdown.ts';
import { comparisonText } from '../../shared/report/compare/text.ts';
import { compareReport } from '../../shared/report/json.ts';
import { SEVERITIES, type Severity } from '../../shared/rules/rule.ts';
import { type LengthUnit, Say } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { atRevision } from '../files/git-revision.ts';
import { BARS } from './check.ts';
import { type Command, LENGTHS, LENGTHS_HELP, ROOT_HELP, type Surroundings } from './command.ts';
import { type OpenedPlan, openNamed } from './open-plan.ts';
import { type Parsed, parseOptions, WrongUse } from './options.ts';

const FORMATS = ['text', 'md', 'json'] as const;

const OPTIONS = {
  git: { value: later`revision` },
  format: { oneOf: FORMATS },
  'fail-on': { oneOf: BARS },
  root: { value: later`folder` },
  lengths: { oneOf: LENGTHS },
};

export const compare: Command = {
  name: 'compare',
  usage: ['lamella compare OLD NEW [options]', 'lamella compare --git REVISION FILE [options]'],
  about: later`Says what a change does to every shot: what is set otherwise, what follows from it, and which findings are new or gone.`,
  options: [
    [
      '--git REVISION',
      later`Compares with FILE, and all that it uses, as committed there: HEAD, main, v2.`,
    ],
    [
      '--format text|md|json',
      later`For people (default), for a comment on a review, or for programs.`,
    ],
    [
      '--fail-on error|warning|information',
      later`The least severe new finding that makes the exit status 1; default error.`,
    ],
    ROOT_HELP,
    LENGTHS_HELP,
  ],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { options } = parsed;
    const { terminal } = surroundings;
    const pair = await openBoth(parsed, surroundings);
    if (pair === null) return COULD_NOT_RUN;
    const [before, after] = pair;
    const comparison = comparePlans(compared(before), compared(after));
    const say = new Say(() => (options.lengths as LengthUnit | undefined) ?? 'mm');
    const revision = typeof options.git === 'string' ? `${options.git}:` : '';
    if (options.format === 'json')
      terminal.out(compareReport(revision + nameOf(before), nameOf(after), comparison));
    else if (options.format === 'md') terminal.out(comparisonMarkdown(comparison, say));
    else terminal.out(comparisonText(comparison, say, terminal.colour));
    const bar = SEVERITIES.indexOf((options['fail-on'] as Severity | undefined) ?? 'error');
    const over = newFindings(comparison).some(
      ({ severity }) => SEVERITIES.indexOf(severity) <= bar,
    );
    return over ? FOUND : NOTHING_FOUND;
  },
};

const compared = ({ plans, id }: OpenedPlan) => plans.core.compared(id);

const nameOf = ({ plans, id }: OpenedPlan): string => plans.nameOf(id);

const newFindings = ({ shots, findings }: Comparison): readonly ComparedFinding[] => [
  ...findings.new,
  ...shots.flatMap((shot) => shot.findings.new),
];

async function openBoth(
  parsed: Parsed,
  surroundings: Surroundings,
): Promise<readonly [OpenedPlan, OpenedPlan] | null> {
  const { options, rest } = parsed;
  const { terminal } = surroundings;
  const [first, second] = rest;
  if (typeof options.git !== 'string') {
    if (first === undefined || second === undefined || rest.length > 2)
      throw new WrongUse(
        message`compare takes two plans, or one with --git REVISION, but got ${rest.length}.`,
      );
    const before = await openNamed(first, parsed, surroundings);
    const after = before && (await openNamed(second, parsed, surroundings));
    return before && after && [before, after];
  }
  if (first === undefined || rest.length > 1)
    throw new WrongUse(message`compare --git takes one plan, but got ${rest.length}.`);
  const after = await openNamed(first, parsed, surroundings);
  if (after === null) return null;
  const revision = await atRevision(options.git, path.resolve(terminal.cwd, first));
  if (!revision.ok) {
    terminal.err(`lamella: ${revision.why}.\n`);
    return null;
  }
  const before = await openNamed(first, parsed, surroundings, revision.read);
  return before && [before, after];
}
