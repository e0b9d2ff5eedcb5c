import path from 'node:path';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { compareReport } from '../../shared/report/json.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { atRevision } from '../files/git-revision.ts';
import {
  type Command,
  FAIL_ON,
  LENGTHS,
  ROOT,
  type Surroundings,
  sayIn,
  statusOf,
} from './command.ts';
import { type OpenedPlan, openNamed } from './open-plan.ts';
import { type Parsed, WrongUse } from './options.ts';

export const compare: Command = {
  name: 'compare',
  usage: ['lamella compare OLD NEW [options]', 'lamella compare --git REVISION FILE [options]'],
  about: later`Compares two plans shot by shot: changed settings, changed results, new and resolved findings.`,
  options: {
    git: {
      value: later`revision`,
      shown: 'REVISION',
      about: later`Compares with FILE and the files that it uses at this revision: HEAD, main, v2.`,
    },
    format: {
      oneOf: ['text', 'md', 'json'],
      about: later`text (default), md for a review comment, or json`,
    },
    'fail-on': {
      ...FAIL_ON,
      about: later`Lowest severity of a new finding that makes the exit status 1. Default: error.`,
    },
    root: ROOT,
    lengths: LENGTHS,
  },
  async run(parsed, surroundings) {
    const { options } = parsed;
    const { terminal } = surroundings;
    const pair = await openBoth(parsed, surroundings);
    if (pair === null) return COULD_NOT_RUN;
    const [before, after] = pair;
    const comparison = comparePlans(compared(before), compared(after));
    const revision = typeof options.git === 'string' ? `${options.git}:` : '';
    const say = sayIn(options);
    terminal.out(
      options.format === 'json'
        ? compareReport(revision + nameOf(before), nameOf(after), comparison)
        : options.format === 'md'
          ? markdownText(comparisonDocument(comparison, say, 'page'))
          : terminalText(comparisonDocument(comparison, say, 'terminal'), terminal.colour),
    );
    const { shots, findings } = comparison;
    return statusOf(
      [findings, ...shots.map((shot) => shot.findings)].flatMap((one) => one.new),
      options,
    );
  },
};

const compared = ({ plans, id }: OpenedPlan) => plans.core.compared(id);

const nameOf = ({ plans, id }: OpenedPlan): string => plans.nameOf(id);

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
