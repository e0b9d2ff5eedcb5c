import path from 'node:path';
import type { Comparison } from '../../shared/api/compared.ts';
import type { PageFrame } from '../../shared/api/frame.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { comparePage, comparePageStyle } from '../../shared/report/compare/html.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { compareReport } from '../../shared/report/json.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { atRevision } from '../files/git-revision.ts';
import type { OutputKind } from '../files/own-output.ts';
import { isPlanName } from '../files/plan-files.ts';
import { pathOfUri } from '../files/uri.ts';
import { pageFrame } from '../handlers/frame.ts';
import { FRAME_WIDTH, hashOf } from '../page-parts.ts';
import { complain } from '../terminal.ts';
import {
  type Command,
  FAIL_ON,
  FORCE,
  LENGTHS,
  OUTPUT,
  ROOT,
  type Surroundings,
  sayIn,
  statusOf,
} from './command.ts';
import { type OpenedPlan, openNamed } from './open-plan.ts';
import { type Parsed, WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

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
      oneOf: ['text', 'md', 'html', 'json'],
      about: later`text (default), md for a review comment, html for one page with frames, or json`,
    },
    output: OUTPUT,
    force: FORCE,
    'fail-on': {
      ...FAIL_ON,
      about: later`Lowest severity of a new finding that makes the exit status 1. Default: error.`,
    },
    root: ROOT,
    lengths: LENGTHS,
  },
  async run(parsed, surroundings) {
    const { options } = parsed;
    const { output } = options;
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is the name of a plan, and would overwrite it.`,
      );
    const pair = await openBoth(parsed, surroundings);
    if (pair === null) return COULD_NOT_RUN;
    const { comparison, text } = await written(pair, options, surroundings);
    const status = await writeOutput(
      surroundings.terminal,
      options,
      message`The comparison`,
      (options.format ?? 'text') as OutputKind,
      text,
    );
    const { shots, findings } = comparison;
    return status === COULD_NOT_RUN
      ? status
      : statusOf(
          [findings, ...shots.map((shot) => shot.findings)].flatMap((one) => one.new),
          options,
        );
  },
};

async function written(
  [before, after]: readonly [OpenedPlan, OpenedPlan],
  options: Parsed['options'],
  { terminal, reviewScript }: Surroundings,
): Promise<{ readonly comparison: Comparison; readonly text: string }> {
  const now = compared(after);
  const comparison = comparePlans(compared(before), now);
  const revision = typeof options.git === 'string' ? `${options.git}:` : '';
  const names = { before: revision + nameOf(before), after: nameOf(after) };
  const say = sayIn(options);
  switch (options.format) {
    case 'json':
      return { comparison, text: compareReport(names.before, names.after, comparison) };
    case 'md':
      return { comparison, text: markdownText(comparisonDocument(comparison, say, 'page')) };
    case 'html': {
      const frames = { before: frameIn(before), after: frameIn(after) };
      const file = path.basename(pathOfUri(after.id) ?? '');
      const page = { ...names, file, comparison, shots: now.shots, frames };
      const script = reviewScript();
      const hashes = { style: await hashOf(comparePageStyle()), script: await hashOf(script) };
      return { comparison, text: comparePage(page, say, script, hashes) };
    }
    default: {
      const isInColour = terminal.colour && options.output === undefined;
      const document = comparisonDocument(comparison, say, 'terminal');
      return { comparison, text: terminalText(document, isInColour) };
    }
  }
}

/** The frame of a shot, or why it can't be drawn. */
const frameIn =
  ({ plans, id }: OpenedPlan) =>
  (shot: string): PageFrame | string | null => {
    const drawn = plans.core.frame(id, shot, FRAME_WIDTH);
    return drawn?.ok ? pageFrame(drawn) : (drawn?.why ?? null);
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
    complain(terminal, `${revision.why}.`);
    return null;
  }
  const before = await openNamed(first, parsed, surroundings, revision.read);
  return before && [before, after];
}
