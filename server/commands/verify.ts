import { stat } from 'node:fs/promises';
import path from 'node:path';
import { inertLine } from '../../shared/report/inert.ts';
import { checkJson, print } from '../../shared/report/json.ts';
import { textReport } from '../../shared/report/text.ts';
import { clipsJson, verifyText } from '../../shared/report/verify.ts';
import { SEVERITIES, type Severity } from '../../shared/rules/rule.ts';
import { Say } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { pathOfUri } from '../files/uri.ts';
import type { ClipFolders } from '../media/find-clips.ts';
import { type VerifiedPlan, verifyClips } from '../media/verify-clips.ts';
import { BARS } from './check.ts';
import { type Command, FORMAT_HELP, FORMATS, ROOT_HELP, type Surroundings } from './command.ts';
import { type OpenedPlan, openPlan } from './open-plan.ts';
import { type Parsed, parseOptions, WrongUse } from './options.ts';
import { testClip } from './test-clip.ts';

const OPTIONS = {
  media: { value: later`folder` },
  'test-clip': { value: later`clip` },
  shot: { value: later`shot’s name` },
  format: { oneOf: FORMATS },
  'fail-on': { oneOf: BARS },
  root: { value: later`folder` },
};

export const verify: Command = {
  name: 'verify',
  usage: [
    'lamella verify FILE [--media DIR] [options]',
    'lamella verify --test-clip CLIP --shot NAME FILE [options]',
  ],
  about: later`Reads the clips that a plan lists and says which of them are not what their shots ask for: size, rate, codec, bit rate, length, and shutter, ISO and white balance where a file carries them. A test clip at the start of the day tells whether the body is set as the plan says. Nothing is ever written to a clip.`,
  options: [
    [
      '--media DIR',
      later`The folder of the clips, besides the plan’s own; paths may start from there.`,
    ],
    [
      '--test-clip CLIP',
      later`Only this file, against the shot named by --shot: pass or fail first.`,
    ],
    ['--shot NAME', later`The shot that the test clip was recorded for.`],
    FORMAT_HELP,
    [
      '--fail-on error|warning|information',
      later`The least severe finding that makes the exit status 1; default error.`,
    ],
    ROOT_HELP,
  ],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { 'test-clip': clip, shot, media } = parsed.options;
    if ((clip === undefined) !== (shot === undefined))
      throw new WrongUse(message`--test-clip CLIP and --shot NAME go together.`);
    if (clip !== undefined && media !== undefined)
      throw new WrongUse(message`--test-clip names its file itself, and takes no --media.`);
    const opened = await openPlan('verify', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    if (typeof clip === 'string' && typeof shot === 'string')
      return testClip(clip, shot, opened, parsed, surroundings);
    return verifyAll(opened, parsed, surroundings);
  },
};

async function verifyAll(
  { plans, id }: OpenedPlan,
  parsed: Parsed,
  surroundings: Surroundings,
): Promise<number> {
  const { terminal, createClipReader } = surroundings;
  const folders = await foldersOf({ plans, id }, parsed, terminal.cwd);
  const reader = createClipReader();
  const stop = new AbortController();
  const unheard = terminal.onInterrupt(() => stop.abort());
  let verified: VerifiedPlan;
  try {
    verified = await verifyClips({
      core: plans.core,
      plan: id,
      folders,
      reader,
      signal: stop.signal,
      progress: (done, of, clip) =>
        terminal.progress(inertLine(message`${done + 1} of ${of}: ${clip}`)),
    });
  } finally {
    terminal.progress(null);
    unheard();
    await reader.close();
  }
  const findings = plans.core.verify(id, verified.readings);
  const file = {
    name: plans.nameOf(id),
    findings: findings.map((finding) => ({ finding, fixes: [] })),
    line: (index: number) => plans.core.line(id, index),
    nameOf: (other: string) => plans.nameOf(other),
  };
  const notAsked = verified.notAsked.map((each) => nameFrom(terminal.cwd, each));
  const { clips, stopped } = verified;
  const cuts = plans.core.cutCoverage(id, verified.readings);
  const besides = { clips, cuts, notAsked, stopped };
  if (parsed.options.format === 'json')
    terminal.out(print({ ...checkJson([file]), ...besides, clips: clipsJson(clips) }));
  else {
    terminal.out(verifyText(besides, new Say(), terminal.colour));
    terminal.out(`\n${textReport([file], terminal.colour)}`);
  }
  if (verified.stopped) return COULD_NOT_RUN;
  const bar = SEVERITIES.indexOf((parsed.options['fail-on'] as Severity | undefined) ?? 'error');
  const isOver = findings.some(({ severity }) => SEVERITIES.indexOf(severity) <= bar);
  return isOver ? FOUND : NOTHING_FOUND;
}

async function foldersOf(
  { plans, id }: Pick<OpenedPlan, 'plans' | 'id'>,
  { options }: Parsed,
  cwd: string,
): Promise<ClipFolders> {
  const media = typeof options.media === 'string' ? path.resolve(cwd, options.media) : null;
  if (media !== null && !(await isFolder(media)))
    throw new WrongUse(message`--media ${String(options.media)}: no such folder.`);
  const plan = path.dirname(pathOfUri(id) ?? cwd);
  return { plan, root: plans.rootOf(id), media };
}

const isFolder = async (at: string): Promise<boolean> => {
  try {
    return (await stat(at)).isDirectory();
  } catch {
    return false;
  }
};

/** From the current folder where it lies below it, with `/`. */
export function nameFrom(cwd: string, file: string): string {
  const way = path.relative(cwd, file);
  const isBelow = !way.startsWith('..') && !path.isAbsolute(way);
  return (isBelow ? way : file).split(path.sep).join('/');
}
