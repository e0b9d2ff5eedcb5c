import path from 'node:path';
import { clipsDocument, clipsJson } from '../../shared/report/clips.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { checkJson, print } from '../../shared/report/json.ts';
import { textReport } from '../../shared/report/text.ts';
import { Say } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { pathOfUri } from '../files/uri.ts';
import { lookerOrSay } from '../looking/looker-or-say.ts';
import { progressWords } from '../looking/progress-words.ts';
import { checkClips } from '../media/check-clips.ts';
import { reportedFile } from './check.ts';
import { FAIL_ON, FORMAT, folderIn, ROOT, type Surroundings, statusOf } from './command.ts';
import { type OpenedPlan, planCommand } from './open-plan.ts';
import { type Parsed, WrongUse } from './options.ts';
import { testClip, whileReading } from './test-clip.ts';

export const clips = planCommand({
  name: 'clips',
  usage: [
    'lamella clips FILE [--media DIR] [--look] [options]',
    'lamella clips --test-clip CLIP --shot NAME [--look] FILE [options]',
  ],
  about: later`Compares the recorded clips with the plan: resolution, frame rate, codec, bit rate, length, and shutter, ISO and white balance where the file has them. A test clip checks the camera's settings at the start of the day. Never writes to a clip.`,
  options: {
    media: {
      value: later`folder`,
      shown: 'DIR',
      about: later`Folder to look for clips in, besides the plan's own.`,
    },
    'test-clip': {
      value: later`clip`,
      shown: 'CLIP',
      about: later`Checks only this file against the shot named by --shot, and prints PASS or FAIL first.`,
    },
    look: {
      about: later`Also looks at the pictures, with ffmpeg from the path: clipping, flicker of the lamps, repeated frames, sharpness, drift between takes, sound level. Every frame is decoded once, which takes most of the time.`,
    },
    shot: {
      value: later`shot's name`,
      shown: 'NAME',
      about: later`Shot that the test clip was recorded for.`,
    },
    format: FORMAT,
    'fail-on': FAIL_ON,
    root: ROOT,
  },
  refuse({ 'test-clip': clip, shot, media }) {
    if ((clip === undefined) !== (shot === undefined))
      throw new WrongUse(message`--test-clip CLIP and --shot NAME go together.`);
    if (clip !== undefined && media !== undefined)
      throw new WrongUse(message`--test-clip names its file itself, and takes no --media.`);
  },
  run: async (opened, parsed, surroundings) =>
    parsed.options['test-clip'] === undefined
      ? checkAll(opened, parsed, surroundings)
      : testClip(opened, parsed, surroundings),
});

async function checkAll(
  { plans, id }: OpenedPlan,
  parsed: Parsed,
  surroundings: Surroundings,
): Promise<number> {
  const { terminal } = surroundings;
  const media = await folderIn(terminal, 'media', parsed);
  const plan = path.dirname(pathOfUri(id) ?? terminal.cwd);
  const looker = parsed.options.look ? await lookerOrSay(terminal) : undefined;
  const checked = await whileReading(surroundings, (reader, signal) =>
    checkClips({
      core: plans.core,
      plan: id,
      folders: { plan, root: plans.rootOf(id), media },
      reader,
      signal,
      looker: looker ?? null,
      progress: (done, of, clip, looked) =>
        terminal.progress(inertLine(progressWords(done, of, clip, looked))),
    }),
  );
  const findings = plans.core.checkClips(id, checked.readings);
  const file = reportedFile(
    plans,
    id,
    findings.map((finding) => ({ finding, fixes: [] })),
  );
  const notAsked = checked.notAsked.map((each) => nameFrom(terminal.cwd, each));
  const { clips, stopped } = checked;
  const cuts = plans.core.cutCoverage(id, checked.readings);
  const looking = looker === undefined ? 'not-asked' : looker === null ? 'no-ffmpeg' : 'done';
  const besides = { clips, cuts, notAsked, stopped, looking } as const;
  if (parsed.options.format === 'json')
    terminal.out(print({ ...checkJson([file]), ...besides, clips: clipsJson(clips) }));
  else {
    terminal.out(terminalText(clipsDocument(besides, new Say()), terminal.colour));
    terminal.out(`\n${textReport([file], terminal.colour)}`);
  }
  return checked.stopped ? COULD_NOT_RUN : statusOf(findings, parsed.options);
}

/** From the current folder where it lies below it, with `/`. */
function nameFrom(cwd: string, file: string): string {
  const way = path.relative(cwd, file);
  const isBelow = !way.startsWith('..') && !path.isAbsolute(way);
  return (isBelow ? way : file).split(path.sep).join('/');
}
