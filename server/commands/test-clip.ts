/** One clip at the start of the day: is the body set as the plan says? Pass or fail comes first. */

import path from 'node:path';
import type { ClipFacts, ClipReading } from '../../shared/clips/facts.ts';
import type { LookAsk } from '../../shared/looked-at/looked.ts';
import { type BenchRows, benchRows } from '../../shared/report/bench-row.ts';
import { cells, clipJson, type TestClipReport } from '../../shared/report/clips.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { jsonFinding, print } from '../../shared/report/json.ts';
import { painter } from '../../shared/report/paint.ts';
import { Say } from '../../shared/say/say.ts';
import { message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import type { LookAnswer } from '../looking/look-at-clip.ts';
import { lookerOrSay } from '../looking/looker-or-say.ts';
import { progressWords } from '../looking/progress-words.ts';
import type { ClipReader } from '../media/clip-reader.ts';
import { findClip } from '../media/find-clips.ts';
import { complain } from '../terminal.ts';
import type { Surroundings } from './command.ts';
import { type OpenedPlan, shotOf } from './open-plan.ts';
import type { Parsed } from './options.ts';

export async function testClip(
  opened: OpenedPlan,
  { options }: Parsed,
  surroundings: Surroundings,
): Promise<number> {
  const { plans, id } = opened;
  const { terminal } = surroundings;
  const clip = String(options['test-clip']);
  const shot = shotOf(opened, String(options.shot));
  const ask = plans.core.lookAsk(id, shot);
  const looker = options.look && ask ? await lookerOrSay(terminal) : null;
  const reading = await readOne(clip, surroundings, (found, facts, signal) =>
    looker && ask
      ? looker.look(found, facts, ask, signal, (share) =>
          terminal.progress(inertLine(progressWords(0, 1, clip, share))),
        )
      : null,
  );
  if (reading === null) return COULD_NOT_RUN;
  // The path was typed just now: nothing was recorded wrongly, and no card is at stake.
  if (reading.state === 'not-found') {
    complain(terminal, message`${inertLine(clip)}: no such file.`);
    return COULD_NOT_RUN;
  }
  const findings = plans.core.testClip(id, shot, clip, reading) ?? [];
  const isPass = findings.length === 0;
  const rows = ask && rowsOf(ask, reading);
  if (options.format === 'json') {
    terminal.out(
      print({
        version: 1,
        clip,
        shot,
        pass: isPass,
        read: reading.state === 'read' ? clipJson(reading.facts) : null,
        looked: (reading.state === 'read' && reading.looked) || null,
        benchRow: rows?.body ?? null,
        lampRow: rows?.lamp ?? null,
        offsetOf: rows && (rows.body ?? rows.lamp) ? rows.of : null,
        findings: findings
          .map((finding) => jsonFinding(finding, (each) => plans.nameOf(each)))
          .map(({ rule, severity, message, numbers }) => ({
            rule,
            severity,
            message,
            ...(numbers && { numbers }),
          })),
      } satisfies TestClipReport),
    );
    return isPass ? NOTHING_FOUND : FOUND;
  }
  const paint = painter(terminal.colour);
  const [named, asking] = [inertLine(clip), inertLine(shot)];
  const verdict = isPass
    ? `${paint('fix', message`PASS`)}  ${message`${named} matches ${asking}, as far as the file says.`}`
    : `${paint('error', message`FAIL`)}  ${message`${named} doesn't match ${asking}.`}`;
  const why = findings.flatMap(({ what, why: more, rule }) => [
    `  ${inertLine(what)}  ${paint('aside', rule)}`,
    ...(more === '' ? [] : [`  ${inertLine(more)}`]),
  ]);
  terminal.out(
    `${[verdict, ...why, ...readLines(reading), ...(rows ? rowLines(rows) : [])].join('\n')}\n`,
  );
  return isPass ? NOTHING_FOUND : FOUND;
}

const rowsOf = (ask: LookAsk, reading: ClipReading): BenchRows | null =>
  reading.state === 'read' && reading.looked
    ? benchRows(ask, reading.looked, reading.facts.picture?.transfer)
    : null;

/** What the picture says of body or lamp, for whoever filmed a grey card. */
function rowLines({ body, lamp, of }: BenchRows): readonly string[] {
  const row = lamp ?? body;
  if (row === null) return [];
  const name = inertLine(lamp ? lamp.light : body!.body);
  return [
    `  ${message`If an 18% grey card fills the middle of the frame, add this to \`bench\` of ${name}:`}`,
    `    - ${row.text}`,
    `  ${whose(of)}`,
  ];
}

function whose(of: BenchRows['of']): string {
  switch (of) {
    case 'body':
      return message`The lamps were metered, so it is the offset of the body.`;
    case 'lamp':
      return message`The body was measured, so it is the offset of the lamp.`;
    case 'together':
      return message`It is the offset of body and lamps together. Measure the lamps with a meter to tell them apart.`;
  }
}

/** null: it was stopped. */
async function readOne(
  clip: string,
  surroundings: Surroundings,
  look: (file: string, facts: ClipFacts, signal: AbortSignal) => Promise<LookAnswer> | null,
): Promise<ClipReading | null> {
  const { cwd } = surroundings.terminal;
  const named = path.resolve(cwd, clip);
  // Whoever names a file may read it, wherever it lies.
  const folders = { plan: cwd, root: path.parse(named).root, media: null };
  const found = await findClip(named, folders);
  if (!found.ok) return found.reading;
  return whileReading(surroundings, async (reader, signal) => {
    try {
      const reading = await reader.read(found.file, signal);
      if (reading.state !== 'read') return reading;
      const seen = await look(found.file, reading.facts, signal);
      if (seen?.state === 'stopped') return null;
      if (seen?.state === 'failed') return { ...reading, lookFailed: seen.why };
      return seen === null ? reading : { ...reading, looked: seen.looked };
    } catch (cause) {
      if (signal.aborted) return null;
      throw cause;
    }
  });
}

/** Reads clips until it is done, or whoever waits has had enough. */
export async function whileReading<T>(
  { terminal, createClipReader }: Surroundings,
  read: (reader: ClipReader, signal: AbortSignal) => Promise<T>,
): Promise<T> {
  const reader = createClipReader();
  const stop = new AbortController();
  const unheard = terminal.onInterrupt(() => stop.abort());
  try {
    return await read(reader, stop.signal);
  } finally {
    terminal.progress(null);
    unheard();
    await reader.close();
  }
}

/** What was read, and what the file doesn't carry: that has to be read back from the body. */
function readLines(reading: ClipReading): readonly string[] {
  if (reading.state !== 'read') return [];
  const { facts } = reading;
  const missing = [
    ...(facts.rate === null ? [message`rate (too few frames)`] : []),
    ...(facts.shutterS === null ? [message`shutter`] : []),
    ...(facts.iso === null ? [message`ISO`] : []),
    ...(facts.whiteBalance === null ? [message`white balance`] : []),
  ];
  const read = cells(facts, new Say()).filter((cell) => cell !== '');
  return [
    `  ${message`Read: ${read.map(inertLine).join(', ')}.`}`,
    ...(missing.length > 0
      ? [`  ${message`Not in the file, so check it on the camera: ${missing.join(', ')}.`}`]
      : []),
  ];
}
