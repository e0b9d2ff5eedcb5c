/** What was seen in the clips of a plan, as findings where the clips stand. */
import type { ClipFacts, ClipReading } from '../clips/facts.ts';
import { lookAskOf } from '../figures/look-ask.ts';
import { driftBetween, type Sight, sightsOf } from '../looked-at/judge.ts';
import type { LookAsk } from '../looked-at/looked.ts';
import { idOf } from '../plan/entry-id.ts';
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

/** Each take of a shot against the first of it that was looked at and not rejected. */
export function driftFindings(
  clips: readonly ListedClip[],
  readings: ReadonlyMap<string, ClipReading>,
): ReadonlyMap<ListedClip, Finding> {
  const first = new Map<string, ListedClip>();
  const found = new Map<ListedClip, Finding>();
  const seenIn = ({ path }: ListedClip) => {
    const reading = readings.get(path);
    return reading?.state === 'read' ? reading.looked : undefined;
  };
  for (const clip of clips) {
    const seen = seenIn(clip);
    if (!seen || clip.verdict === 'reject') continue;
    const before = first.get(clip.shot);
    if (!before) {
      first.set(clip.shot, clip);
      continue;
    }
    const drift = driftBetween(seenIn(before)!, seen);
    if (!drift) continue;
    const { name: rule, severity } = clipDrifts;
    const { shot, path, at } = clip;
    const facts = { file: path, other: before.path, ...drift };
    found.set(clip, { at, shot, related: [], rule, severity, facts });
  }
  return found;
}
