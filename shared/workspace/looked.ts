/** What was seen in the clips of a plan, as findings where the clips stand. */
import type { ClipFacts, ClipReading } from '../clips/facts.ts';
import { cutsInClips } from '../figures/edit-clips.ts';
import { lookAskOf } from '../figures/look-ask.ts';
import { driftBetween, type Sight, sightsOf } from '../looked-at/judge.ts';
import type { LookAsk } from '../looked-at/looked.ts';
import { idOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import type { Cut } from '../plan/generated/types.ts';
import type { FileId } from '../plan/place.ts';
import { toNumber } from '../quantity/rational.ts';
import { clipDrifts } from '../rules/clip-drifts.ts';
import { clipExposure } from '../rules/clip-exposure.ts';
import { clipFlickers } from '../rules/clip-flickers.ts';
import { clipRepeats } from '../rules/clip-repeats.ts';
import { clipSoft } from '../rules/clip-soft.ts';
import { clipSound } from '../rules/clip-sound.ts';
import type { Finding } from '../rules/rule.ts';
import type { Analysis } from './analysis.ts';
import type { ListedClip } from './listed-clips.ts';

/** What to look for in the clips of a shot; undefined: there is no such shot. */
export function lookAskFor(analysis: Analysis, file: FileId, shot: string): LookAsk | undefined {
  const entry = idOf('shots', shot);
  const [bench, figures] = [analysis.bench(file, entry), analysis.figures(file, entry)];
  return bench && figures && lookAskOf(bench, figures);
}

const RULES = {
  exposure: clipExposure,
  flicker: clipFlickers,
  repeats: clipRepeats,
  focus: clipSoft,
  sound: clipSound,
} as const satisfies Readonly<Record<Sight['of'], unknown>>;

/** Of one clip; nothing where its pictures were not looked at. */
export function sightFindings(
  analysis: Analysis,
  file: FileId,
  { shot, path, at }: ListedClip,
  reading: ClipReading,
): readonly Finding[] {
  const ask = lookAskFor(analysis, file, shot);
  if (reading.state !== 'read' || !reading.looked || !ask) return [];
  const fps = constantFps(reading.facts);
  return sightsOf(ask, reading.looked).map((sight): Finding => {
    const { name: rule, severity } = RULES[sight.of];
    const facts = { file: path, sight, ...(sight.of === 'repeats' && { fps }) };
    return { at, shot, related: [], rule, severity, facts };
  });
}

const constantFps = ({ rate }: ClipFacts): number | null =>
  rate?.kind === 'constant' ? toNumber(rate.rate) : null;

/**
 * Each clip against the first that it is graded alike with, of those that were looked at and not
 * rejected: a take of its shot, else a clip whose cuts name the same grade.
 *
 * @param gradeOf the grade that the cuts of a clip name; undefined: none of them names one
 */
export function driftFindings(
  clips: readonly ListedClip[],
  readings: ReadonlyMap<string, ClipReading>,
  gradeOf: (path: string) => string | undefined,
): ReadonlyMap<ListedClip, Finding> {
  const first = new Map<string, ListedClip>();
  const found = new Map<ListedClip, Finding>();
  const seenIn = ({ path }: ListedClip) => {
    const reading = readings.get(path);
    return reading?.state === 'read' ? reading.looked : undefined;
  };
  for (const clip of clips) {
    const { shot, path, at } = clip;
    const seen = seenIn(clip);
    if (!seen || clip.verdict === 'reject') continue;
    const grade = gradeOf(path);
    const groups = [`shot ${shot}`, ...(grade === undefined ? [] : [`grade ${grade}`])];
    const before = groups.map((group) => first.get(group)).find((one) => one !== undefined);
    for (const group of groups) if (!first.has(group)) first.set(group, clip);
    const drift = before && driftBetween(seenIn(before)!, seen);
    if (!drift) continue;
    const { name: rule, severity } = clipDrifts;
    const facts = { file: path, other: before.path, ...drift };
    found.set(clip, { at, shot, related: [], rule, severity, facts });
  }
  return found;
}

/** The grade that the cuts of the edit name for each clip that they use. */
export function gradesOf(analysis: Analysis, file: FileId): ReadonlyMap<string, string> {
  const grades = new Map<string, string>();
  for (const { cut, file: path } of cutsInClips(analysis.edit(file))) {
    const fields = analysis.entries.lowered(file, idOf('cuts', cut))?.value as Cut | undefined;
    const grade = fields && ifKnown(fields.grade);
    if (grade !== undefined) grades.set(path, grade);
  }
  return grades;
}
