/** "Solve this shot" in words and edits: each change with its reason, or what stands in the way. */

import type { LocatedEdit } from '../api/located.ts';
import type { Making } from '../api/making.ts';
import type { SolvedChange, SolvedFinding, SolvedShot } from '../api/solved.ts';
import { inOneGo, type Steps } from '../engine/steps.ts';
import type { Bench } from '../figures/bench.ts';
import type { FigureName } from '../figures/catalogue/catalogue.ts';
import { figuresJson } from '../figures/contract.ts';
import { readBench } from '../figures/read-bench.ts';
import { isMissed } from '../figures/reasons.ts';
import { idOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { PlanEdit } from '../plan/problem.ts';
import type { Ref } from '../plan/ref.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import type { Say } from '../say/say.ts';
import {
  type Assignment,
  changedIn,
  type LightChoice,
  placeOf,
  type Setting,
} from '../solve/choice.ts';
import type { Conflict, Opening } from '../solve/conflict.ts';
import { Effort } from '../solve/effort.ts';
import { isJudged } from '../solve/judged.ts';
import { type Change, MOST_MS, type Solution, solve } from '../solve/solve.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { FixMaker } from '../workspace/fixes.ts';
import { locatedEdits } from '../workspace/located-edits.ts';
import { making } from '../workspace/making.ts';
import { severitiesIn } from '../workspace/severities.ts';
import { tryOut } from '../workspace/trial.ts';

/** null: there is no such shot, or it can't be read. */
export const solveShot = (context: Context, file: FileId, shot: string): SolvedShot | null =>
  inOneGo(solving(context, file, shot));

/** The same in slices. */
export const startSolving = (
  context: Context,
  file: FileId,
  shot: string,
): Making<SolvedShot | null> => making(context.trials, () => solving(context, file, shot));

function* solving(context: Context, file: FileId, shot: string): Steps<SolvedShot | null> {
  const { analysis, say } = context;
  const id: EntryId = idOf('shots', shot);
  if (!analysis.shots(file).includes(id)) return null;
  if (analysis.textFindings(file, id).some(({ severity }) => severity === 'error')) return null;
  const bench = analysis.bench(file, id);
  if (!bench) return null;
  const reader = analysis.reader(file);
  const files = analysis.names.reaches(file);
  const severities = severitiesIn(files, (one) => analysis.reader(one));
  const findings = analysis.shotFindings(file, id);
  const effort = new Effort(MOST_MS);
  const solution = yield* solve({
    bench,
    house: { allow: reader.plan('allow'), severities },
    findings,
    relit: (names) => relit(context, file, bench, names),
    isTaken: (assignment) => isTaken(context, editsFor(context, bench, assignment), effort),
    effort,
  });
  const severityOf = ({ rule, severity }: Finding) => severities.get(rule) ?? severity;
  const others = findings.filter(
    (one) => !isJudged(one.rule) && ['error', 'warning'].includes(severityOf(one)),
  );
  return {
    ...EMPTY,
    shot,
    outcome: solution.outcome,
    others: others.flatMap((one) =>
      inWords([one], say).map((words) => ({ ...words, fixes: byHand(context, one) })),
    ),
    notKnown: unknownIn(context, file, id),
    ...said(context, bench, solution),
  };
}

const byHand = (context: Context, finding: Finding) =>
  new FixMaker(context).of(finding).map(({ title, sideEffects }) => ({
    title,
    ...(sideEffects && { sideEffects }),
  }));

/** Effort of trials in one unit of a search's: by measurement. */
const TRIAL_PER_UNIT = 400;

const EMPTY = { changes: [], clears: [], leaves: [], demands: [], openings: [], edits: [] };

function said(context: Context, bench: Bench, solution: Solution): Partial<SolvedShot> {
  const { say } = context;
  switch (solution.outcome) {
    case 'clear':
      return {};
    case 'solved':
      return {
        changes: solution.changes.map((change) => ({
          ...changeWords(bench, solution.assignment, change, say),
          edits: editsOf(context, bench, solution.assignment, change.setting),
        })),
        ...(solution.holds && { holds: solution.holds }),
        ...(solution.isCut && { cutShort: true }),
        clears: inWords(solution.clears, say),
        leaves: inWords(solution.leaves, say),
        edits: editsFor(context, bench, solution.assignment),
      };
    case 'not-found':
      return { cutShort: true };
    case 'no-way':
      return {
        ...conflictWords(solution.conflict, say),
        ...(solution.conflict.isCut && { cutShort: true }),
      };
  }
}

/** What the rules that settings are judged by rest on, by its name in the contract. */
const JUDGED_BY = [
  'usableDepthMm',
  'depthMm.needed',
  'exposureErrorStops',
  'flickerResidual',
  'smearPx',
  'tiltWindowDeg',
] as const satisfies readonly FigureName[];

/** A rule is silent where its figure isn't known: that is no reason to call the shot solved unsaid. */
function unknownIn({ analysis }: Context, file: FileId, id: EntryId): Record<string, string> {
  const figures = analysis.figures(file, id);
  if (!figures) return {};
  const { notKnown } = figuresJson(figures);
  return Object.fromEntries(
    JUDGED_BY.filter((name) => isMissed(notKnown, name)).map((name) => [name, notKnown[name]!]),
  );
}

/** The shot's lights as if it named these. */
function relit(
  { analysis }: Context,
  file: FileId,
  { fields, shot, at }: Bench,
  names: readonly string[],
) {
  const light = {
    state: 'known' as const,
    at: fields.light.at,
    value: names.map((name) => ({
      state: 'known' as const,
      value: name as Ref,
      at: fields.light.at,
    })),
  };
  return readBench(analysis.reader(file), {
    name: shot,
    group: 'shots',
    file,
    entry: at.entry,
    fields: { ...fields, light },
  }).lights;
}

/** Whether the plan has no more errors and warnings with the edits than without. */
function isTaken(context: Context, edits: readonly LocatedEdit[], effort: Effort): boolean {
  if (edits.length === 0) return false;
  const before = context.trials.effort;
  const { worse } = tryOut(context, edits);
  effort.spend((context.trials.effort - before) / TRIAL_PER_UNIT);
  return worse.every(({ severity }) => severity !== 'error' && severity !== 'warning');
}

const editsFor = (context: Context, bench: Bench, assignment: Assignment): readonly LocatedEdit[] =>
  changedIn(assignment).flatMap((setting) => editsOf(context, bench, assignment, setting));

function editsOf(
  { store }: Context,
  bench: Bench,
  assignment: Assignment,
  setting: Setting,
): readonly LocatedEdit[] {
  const { text } = assignment[setting];
  const at = placeOf(bench, setting);
  const edit: PlanEdit =
    setting === 'light' && assignment.light.stood
      ? { op: 'set', at: { ...bench.at, path: stoodPath(assignment.light) }, text }
      : { op: 'set', at, text };
  return locatedEdits(store, edit);
}

const stoodPath = ({ stood }: LightChoice): readonly string[] => [
  'relight',
  stood?.light ?? '',
  'at',
  'distance',
];

function changeWords(
  bench: Bench,
  { light }: Assignment,
  { setting, from, to, because }: Change,
  say: Say,
): Omit<SolvedChange, 'edits'> {
  const reasons = inWords(because, say);
  if (setting !== 'light' || !light.stood)
    return { setting, from: from || message`not set`, to, because: reasons };
  const now = bench.lights.known
    ? bench.lights.value.find(({ name }) => name === light.stood?.light)
    : undefined;
  const at = now && ifKnown(now.fields.at);
  const distance = at && ifKnown(at.distance);
  return {
    setting: stoodPath(light).join('.'),
    from: distance === undefined ? message`not set` : `${Math.round(distance)} mm`,
    to,
    because: reasons,
  };
}

const inWords = (findings: readonly Finding[], say: Say): readonly SolvedFinding[] =>
  findings.map(({ rule, facts }) => ({
    rule,
    what: ruleNamed(rule)?.words(facts, say).what ?? rule,
  }));

function conflictWords({ demands, openings }: Conflict, say: Say): Partial<SolvedShot> {
  return {
    demands: demands.flatMap(({ finding, assignment }) =>
      inWords([finding], say).map((one) => ({ ...one, at: settingWords(assignment) })),
    ),
    openings: openings.map((opening) => ({
      what: openingWords(opening, say),
      at: settingWords(opening.assignment),
    })),
  };
}

const openingWords = (opening: Opening, say: Say): string =>
  opening.kind === 'field'
    ? message`a field ${say.length(opening.fieldMm)} wide`
    : message`${say.stops(opening.stops)} more light`;

/** "f/16, 1/50 s, ISO 800, tilted 4 deg". */
function settingWords({ aperture, shutter, iso, tilt, light }: Assignment): string {
  const said = [
    aperture.text,
    shutter.text,
    typeof iso.value === 'number' ? message`ISO ${iso.text}` : message`ISO auto`,
    tilt.value ? message`tilt ${tilt.text}` : '',
    light.moved === 0
      ? ''
      : light.stood
        ? message`${light.stood.light} at ${light.text}`
        : light.text,
  ];
  return said.filter((part) => part !== '').join(', ');
}
