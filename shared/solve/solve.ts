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
import { Effort } from './effort.ts';
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
      /** The search ended at its limit: a smaller change may do, or one for the worst case. */
      readonly isCut: boolean;
      readonly assignment: Assignment;
      readonly changes: readonly Change[];
      /** Errors and warnings that go. */
      readonly clears: readonly Finding[];
      /** What is only worth knowing, as it stands then. */
      readonly leaves: readonly Finding[];
    }
  | { readonly outcome: 'no-way'; readonly conflict: Conflict }
  /** None within the search's limit. */
  | { readonly outcome: 'not-found' };

interface ToSolve {
  readonly bench: Bench;
  readonly house: House;
  /** What is found in the shot now, as it is shown. */
  readonly findings: readonly Finding[];
  readonly relit: Relit;
  /** Whether the change would do in the whole plan: the last word on each solution. */
  isTaken(assignment: Assignment): boolean;
  /** What may be asked for a solution, and spent by `isTaken`. */
  readonly effort: Effort;
}

/** What looking for a solution may cost, ms; and for one that holds in the worst case too. */
export const MOST_MS = 400;
const MOST_MS_SURE = 120;

/** Solutions that the rest of the plan would not have, before it is given up. */
const MOST_REFUSED = 12;

export function* solve(toSolve: ToSolve): Steps<Solution> {
  const { bench, house, findings, relit, effort } = toSolve;
  const choices = choicesOf(bench, figuresOf(bench), relit);
  const judge = new Judge(bench, choices, house, effort);
  const rules = rulesFor(findings);
  const objecting = rules.filter((rule) => judge.objects(rule, presentOf(choices)));
  if (objecting.length === 0) return { outcome: 'clear' };
  const search = new Search(choices, judge);
  const middle = yield* leastTaken(search, rules, toSolve);
  if (middle === undefined) return { outcome: 'not-found' };
  if (middle === null) {
    const searchOf = (other: Bench, within: Effort): Search => {
      const others = choicesOf(other, figuresOf(other), relit);
      return new Search(others, new Judge(other, others, house, within));
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
    isCut: effort.isCut || sure?.isCut === true,
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
): Steps<{ readonly found: Found | null; readonly isCut: boolean } | undefined> {
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
  const effort = new Effort(MOST_MS_SURE);
  const judge = new Judge(bench, choices, house, effort, corners);
  if (!rules.some((rule) => judge.objects(rule, middle.assignment))) return undefined;
  const mostSettings = middle.cost.settings;
  const found = yield* new Search(choices, judge).least(rules, {
    ...new Patience(isTaken),
    mostSettings,
  });
  return { found, isCut: effort.isCut };
}

/** Rules to be met: those that no finding of another kind explains away. */
function rulesFor(findings: readonly Finding[]): readonly Judged[] {
  const explained = new Set(
    findings.flatMap(({ rule }) => (isJudged(rule) ? [] : (PRECEDENCE[rule] ?? []))),
  );
  return JUDGED_RULES.filter((rule) => !explained.has(rule));
}

/**
 * Of as few settings as can be; where these can expose the shot right, so that they do. Null: there
 * is none; undefined: none was found before the search ended at its limit.
 */
function* leastTaken(
  search: Search,
  rules: readonly Judged[],
  { isTaken, effort }: ToSolve,
): Steps<Found | null | undefined> {
  const [first, second] = [new Patience(isTaken), new Patience(isTaken)];
  const least = yield* search.least(rules, first);
  if (!least) {
    const wide = yield* search.least(rules, { ...second, isWide: true });
    const isCut = effort.isCut || first.isSpent() || second.isSpent();
    return wide ?? (isCut ? undefined : null);
  }
  const right = yield* search.least(rules, {
    ...second,
    isExposedRight: true,
    mostSettings: least.cost.settings,
  });
  return right ?? least;
}

/** The plan's word on each solution, until it has refused so often that it is asked no more. */
class Patience {
  readonly #isTaken: ToSolve['isTaken'];
  /** Lights that the plan would not have in this shot, whatever else is set. */
  readonly #refusedLights = new Set<LightChoice>();
  #refused = 0;

  constructor(isTaken: ToSolve['isTaken']) {
    this.#isTaken = isTaken;
  }

  readonly isTaken = ({ assignment }: Found): boolean => {
    if (this.#refusedLights.has(assignment.light)) return false;
    const taken = this.#isTaken(assignment);
    if (!taken && isPresent(assignment.light)) this.#refused++;
    if (!taken && !isPresent(assignment.light)) this.#refusedLights.add(assignment.light);
    return taken;
  };

  readonly isSpent = (): boolean => this.#refused >= MOST_REFUSED;
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
