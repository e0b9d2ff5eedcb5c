/** The clips that a plan lists, and how they differ from what their shots need. */

import { type Difference, differences } from '../clips/compare.ts';
import { type CoveredCut, coveredCuts } from '../clips/coverage.ts';
import type { ClipAsk, ClipReading } from '../clips/facts.ts';
import { askedAt, clipAskOf } from '../figures/clips.ts';
import { cutsInClips } from '../figures/edit-clips.ts';
import { idOf, plainId } from '../plan/entry-id.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { type Allowances, accept } from '../rules/acceptance.ts';
import { clipDiffers } from '../rules/clip-differs.ts';
import { clipNotFound } from '../rules/clip-not-found.ts';
import { clipUnreadable } from '../rules/clip-unreadable.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Finding, Related } from '../rules/rule.ts';
import { message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import { type ClipsField, clipsOf, type ListedClip } from './listed-clips.ts';
import { driftFindings, gradesOf, sightFindings } from './looked.ts';
import { withSeverities } from './severities.ts';

/** Clips whose path can be read, in the order of the text. */
export function clipsIn({ entries }: Analysis, file: FileId): readonly ListedClip[] {
  return entries
    .list(file)
    .flatMap(({ id, kind }) =>
      kind.kind === 'clips' && id === plainId(id)
        ? clipsOf(kind.name, entries.lowered(file, id)?.value as ClipsField | undefined)
        : [],
    );
}

/** What the clips of a shot have to match; undefined: there is no such shot. */
export function askOf(analysis: Analysis, file: FileId, shot: string): ClipAsk | undefined {
  const entry: EntryId = idOf('shots', shot);
  const bench = analysis.bench(file, entry);
  const figures = analysis.figures(file, entry);
  return bench && figures && clipAskOf(bench, figures);
}

/**
 * Findings about the clips of a plan. What was rejected is not asked for any more: it may be gone,
 * and be whatever it is. A clip without a reading was not looked at, and nothing is said of it.
 *
 * @param readings by the path that the plan writes
 */
export function clipFindings(
  analysis: Analysis,
  file: FileId,
  readings: ReadonlyMap<string, ClipReading>,
): readonly Finding[] {
  const planAllow = analysis.reader(file).plan('allow');
  const cuts = cutCoverage(analysis, file, readings);
  const clips = clipsIn(analysis, file);
  const grades = gradesOf(analysis, file);
  const drifts = driftFindings(clips, readings, (path) => grades.get(path));
  const found = clips.flatMap((clip): readonly Finding[] => {
    const reading = readings.get(clip.path);
    if (!reading || clip.verdict === 'reject') return [];
    const ask = askOf(analysis, file, clip.shot);
    const own = cuts.filter((cut) => cut.file === clip.path);
    const drift = drifts.get(clip);
    const findings = [
      ...findingsOf(analysis, file, clip, reading, ask, own),
      ...sightFindings(analysis, file, clip, reading),
      ...(drift ? [drift] : []),
    ];
    return accepted(analysis, file, clip, findings, planAllow);
  });
  return withSeverities(found, analysis.names.reaches(file), (one) => analysis.reader(one));
}

/** The cuts of the edit that use clips that were read, and the footage that those lack. */
export const cutCoverage = (
  analysis: Analysis,
  file: FileId,
  readings: ReadonlyMap<string, ClipReading>,
): readonly CoveredCut[] =>
  coveredCuts(cutsInClips(analysis.edit(file)), (path) => {
    const reading = readings.get(path);
    return reading?.state === 'read' ? reading.facts.durationS : undefined;
  });

const cutDifference = ({ cut, toS, durationS, missingS }: CoveredCut): readonly Difference[] =>
  missingS === 0 ? [] : [{ of: 'cut', cut, asked: toS, found: durationS, lost: false }];

/**
 * Findings about a clip that is not in the plan, and that may be shorter than a take; undefined:
 * no such shot.
 */
export function testClipFindings(
  analysis: Analysis,
  file: FileId,
  { shot, path }: Pick<ListedClip, 'shot' | 'path'>,
  reading: ClipReading,
): readonly Finding[] | undefined {
  const at: Place = { file, entry: idOf('shots', shot), path: [], part: 'key' };
  const clip: ListedClip = { shot, path, verdict: null, note: null, at };
  const ask = askOf(analysis, file, shot);
  if (ask === undefined) return undefined;
  const found = accepted(
    analysis,
    file,
    clip,
    [
      ...findingsOf(analysis, file, clip, reading, { ...ask, takeS: null }),
      ...sightFindings(analysis, file, clip, reading),
    ],
    analysis.reader(file).plan('allow'),
  );
  return withSeverities(found, analysis.names.reaches(file), (one) => analysis.reader(one));
}

function findingsOf(
  analysis: Analysis,
  file: FileId,
  { shot, path, verdict, at }: ListedClip,
  reading: ClipReading,
  ask = askOf(analysis, file, shot),
  cuts: readonly CoveredCut[] = [],
): readonly Finding[] {
  const about = { at, shot, related: [] as readonly Related[] };
  if (reading.state === 'not-found') {
    const { name: rule, severity } = clipNotFound;
    return [{ ...about, rule, severity, facts: { file: path, kept: verdict === 'keep' } }];
  }
  if (reading.state === 'unreadable') {
    const { name: rule, severity: usual } = clipUnreadable;
    const { why, fault = null } = reading;
    const severity = fault === 'unsupported' ? 'warning' : usual;
    return [{ ...about, rule, severity, facts: { file: path, why, fault } }];
  }
  if (!ask) return [];
  const differing = [...differences(ask, reading.facts), ...cuts.flatMap(cutDifference)];
  if (differing.length === 0) return [];
  return [
    {
      ...about,
      rule: clipDiffers.name,
      severity: differing.some(({ lost }) => lost)
        ? 'error'
        : differing.every(({ of }) => of === 'duration')
          ? 'note'
          : clipDiffers.severity,
      facts: { file: path, differences: differing },
      related: relatedOf(analysis, file, shot, differing[0]!),
    },
  ];
}

/** The place in the shot of what the clip doesn't have. */
function relatedOf(
  analysis: Analysis,
  file: FileId,
  shot: string,
  difference: Difference,
): readonly Related[] {
  if (difference.of === 'cut') {
    const at: Place = { file, entry: idOf('cuts', difference.cut), path: [], part: 'key' };
    return [{ at, words: message`cut ${difference.cut}` }];
  }
  const bench = analysis.bench(file, idOf('shots', shot));
  if (!bench) return [];
  const at = askedAt(bench, difference.of);
  const key = at.path.find((step) => typeof step === 'string');
  return [{ at, words: message`\`${String(key)}\` of ${shot}` }];
}

/** As in a shot: by its own `allow` or the plan's. */
function accepted(
  analysis: Analysis,
  file: FileId,
  { shot, at }: ListedClip,
  findings: readonly Finding[],
  planAllow: Allowances,
): readonly Finding[] {
  const bench = analysis.bench(file, idOf('shots', shot));
  const none: Allowances = { state: 'missing', at };
  const own = bench?.fields.allow ?? none;
  const names = new Set(findings.map(({ rule }) => rule));
  return accept(findings, { name: shot, allow: own }, planAllow, ruleNamed).findings.filter(
    // Clips say nothing about whether other acceptances of the shot are needed.
    ({ rule }) => names.has(rule),
  );
}
