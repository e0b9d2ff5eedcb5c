/**
 * Solution a shot: the least change of aperture, shutter, ISO, tilt or light at which no rule that
 * these have to do with finds an error or a warning, each change with what it is for; or why there
 * is none.
 */
import type { Steps } from '../engine/steps.ts';
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { UncertainShot } from '../figures/uncertain.ts';
import { cornersFor } from '../rules/certainty.ts';
import { PRECEDENCE } from '../rules/precedence.ts';
import { SHOT_RULES } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import {
  type Assignment,
  type Choices,
  changedIn,
  isPresent,
  type LightChoice,
  presentOf,
  type Setting,
} from './choice.ts';
import { choicesOf } from './choices.ts';
import { type Conflict, conflictOf } from './conflict.ts';
import { type House, Judge } from './judge.ts';
import { isJudged, JUDGED_RULES, type Judged } from './judged.ts';
import type { Relit } from './lights.ts';
import { type Found, Search } from './search.ts';

export interface Change {
  readonly setting: Setting;
  readonly from: string;
  readonly to: string;
  /** What comes back where this alone is left as it is. */
  readonly because: readonly Finding[];
}

export type Solution =
  | { readonly outcome: 'clear' }
  | {
      readonly outcome: 'solved';
      /** It holds wherever the uncertain values lie, or in the middle of them; undefined: none matter. */
      readonly holds: 'worst-case' | 'middle' | undefined;
      readonly assignment: Assignment;
      readonly changes: readonly Change[];
      /** Errors and warnings that go. */
      readonly clears: readonly Finding[];
      /** What is only worth knowing, as it stands then. */
      readonly leaves: readonly Finding[];
    }
  | { readonly outcome: 'no-way'; readonly conflict: Conflict };

interface ToSolve {
  readonly bench: Bench;
  readonly house: House;
  /** What is found in the shot now, as it is shown. */
  readonly findings: readonly Finding[];
  readonly relit: Relit;
  /** Whether the change would do in the whole plan: the last word on each solution. */
  isTaken(assignment: Assignment): boolean;
}

/** Solutions that the rest of the plan would not have, before it is given up. */
const MOST_REFUSED = 12;

export function* solve(toSolve: ToSolve): Steps<Solution> {
  const { bench, house, findings, relit, isTaken } = toSolve;
  const choices = choicesOf(bench, figuresOf(bench), relit);
  const judge = new Judge(bench, choices, house);
  const rules = rulesFor(findings);
  const objecting = rules.filter((rule) => judge.objects(rule, presentOf(choices)));
  if (objecting.length === 0) return { outcome: 'clear' };
  const search = new Search(choices, judge);
  const middle = yield* leastTaken(search, rules, isTaken);
  if (!middle) {
    const searchOf = (other: Bench): Search => {
      const others = choicesOf(other, figuresOf(other), relit);
      return new Search(others, new Judge(other, others, house));
    };
    return {
      outcome: 'no-way',
      conflict: yield* conflictOf(bench, judge, search, rules, searchOf),
    };
  }
  const sure = yield* sureFound(toSolve, rules, choices, middle);
  const { assignment } = sure?.found ?? middle;
  return {
    outcome: 'solved',
    holds: sure && (sure.found ? 'worst-case' : 'middle'),
    assignment,
    changes: changesOf(judge, choices, rules, assignment),
    clears: standing(judge, objecting, presentOf(choices)),
    leaves: standing(judge, rules, assignment),
  };
}

/**
 * A solution that holds wherever the uncertain values lie, of no more settings than the one for
 * their middle; `found` null: that would cost more. Undefined: nothing uncertain matters.
 */
function* sureFound(
  { bench, house, isTaken }: ToSolve,
  rules: readonly Judged[],
  choices: Choices,
  middle: Found,
): Steps<{ readonly found: Found | null } | undefined> {
  const uncertain = new UncertainShot({ bench, figures: figuresOf(bench) });
  const corners = new Map<Judged, readonly Bench[]>();
  for (const rule of rules) {
    yield;
    const asked = SHOT_RULES.find(({ name }) => name === rule)!;
    corners.set(
      rule,
      cornersFor(asked, uncertain).map((corner) => corner.bench),
    );
  }
  const judge = new Judge(bench, choices, house, corners);
  if (!rules.some((rule) => judge.objects(rule, middle.assignment))) return undefined;
  const mostSettings = middle.cost.settings;
  const found = yield* new Search(choices, judge).least(rules, {
    isTaken: patient(isTaken),
    mostSettings,
  });
  return { found };
}

/** Rules to be met: those that no finding of another kind explains away. */
function rulesFor(findings: readonly Finding[]): readonly Judged[] {
  const explained = new Set(
    findings.flatMap(({ rule }) => (isJudged(rule) ? [] : (PRECEDENCE[rule] ?? []))),
  );
  return JUDGED_RULES.filter((rule) => !explained.has(rule));
}

/** Of as few settings as can be; where these can expose the shot right, so that they do. */
function* leastTaken(
  search: Search,
  rules: readonly Judged[],
  isTaken: ToSolve['isTaken'],
): Steps<Found | null> {
  const least = yield* search.least(rules, { isTaken: patient(isTaken) });
  if (!least) return yield* search.least(rules, { isTaken: patient(isTaken), isWide: true });
  const right = yield* search.least(rules, {
    isTaken: patient(isTaken),
    isExposedRight: true,
    mostSettings: least.cost.settings,
  });
  return right ?? least;
}

/** The plan's word on each solution, until it has refused too often to be asked on. */
function patient(isTaken: ToSolve['isTaken']): (found: Found) => boolean {
  /** Lights that the plan would not have in this shot, whatever else is set. */
  const refusedLights = new Set<LightChoice>();
  let refused = 0;
  return ({ assignment }) => {
    if (refused >= MOST_REFUSED || refusedLights.has(assignment.light)) return false;
    const taken = isTaken(assignment);
    if (!taken && isPresent(assignment.light)) refused++;
    if (!taken && !isPresent(assignment.light)) refusedLights.add(assignment.light);
    return taken;
  };
}

const standing = (
  judge: Judge,
  rules: readonly Judged[],
  assignment: Assignment,
): readonly Finding[] => rules.flatMap((rule) => judge.verdict(rule, assignment)?.finding ?? []);

function changesOf(
  judge: Judge,
  choices: Choices,
  rules: readonly Judged[],
  assignment: Assignment,
): readonly Change[] {
  const present = presentOf(choices);
  return changedIn(assignment).map((setting) => {
    const without = { ...assignment, [setting]: present[setting] };
    const back = rules.filter((rule) => judge.objects(rule, without));
    return {
      setting,
      from: present[setting].text,
      to: assignment[setting].text,
      because: standing(judge, back, without),
    };
  });
}
