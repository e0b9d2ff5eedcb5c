/**
 * Why nothing solves a shot: the fewest demands that exclude each other, how little of each would
 * have to be given up, and what opens the way instead. All of it is tried, none concluded.
 */
import type { Steps } from '../engine/steps.ts';
import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { derive } from '../figures/figure.ts';
import { isOutOfReach } from '../rules/field-out-of-reach.ts';
import type { Finding } from '../rules/rule.ts';
import type { Assignment } from './choice.ts';
import { Effort } from './effort.ts';
import { type Judge, sizeOf } from './judge.ts';
import { JUDGED_RULES, type Judged } from './judged.ts';
import { brighter } from './lights.ts';
import type { Found, Search } from './search.ts';

/** One of the demands that exclude each other. */
interface Demand {
  readonly rule: Judged;
  /** What is left of it where the others are met: as little as can be. */
  readonly finding: Finding;
  /** How the shot is set then. */
  readonly assignment: Assignment;
}

export type Opening =
  | { readonly kind: 'field'; readonly fieldMm: number; readonly assignment: Assignment }
  | { readonly kind: 'light'; readonly stops: number; readonly assignment: Assignment };

export interface Conflict {
  readonly demands: readonly Demand[];
  readonly openings: readonly Opening[];
  /** There may be more to say: the search for it ended at its limit. */
  readonly isCut: boolean;
}

/** A search set up anew for another bench, within the same effort. */
type SearchOf = (bench: Bench, effort: Effort) => Search;

/** How much of a demand has to be given up is narrowed down to about a tenth of it. */
const NARROWINGS = 4;
/** Units of effort after which what was found is mild enough. */
const ENOUGH = 800;
/** What looking for what excludes each other may cost, and for what opens a way, ms each. */
const MOST_MS = 200;
/** What excludes each other does so by the rules alone, to their last dead band. */
const WIDE = { isWide: true };
/** Frames this much wider are tried. */
const WIDER = [1.1, 1.25, 1.5, 2, 3];
/** Stops of more light that are tried. */
const MORE_LIGHT = [1, 2, 3, 4];

export function* conflictOf(
  bench: Bench,
  judge: Judge,
  search: Search,
  rules: readonly Judged[],
  searchOf: SearchOf,
): Steps<Conflict> {
  const effort = new Effort(MOST_MS);
  judge.effort = effort;
  const core = yield* smallest(judge, search, rules);
  const demands: Demand[] = [];
  for (const rule of core) {
    const found = yield* mildest(judge, search, core, rule);
    const finding = found && judge.finding(rule, found.assignment);
    if (finding) demands.push({ rule, finding, assignment: found.assignment });
  }
  const opening = new Effort(MOST_MS);
  const within = (other: Bench): Search => searchOf(other, opening);
  const wider = yield* byField(bench, rules, within);
  const lighter = yield* byLight(bench, core, rules, within);
  return { demands, openings: [...wider, ...lighter], isCut: effort.isCut || opening.isCut };
}

/** Rules that can't all be met, of which any but one can. */
function* smallest(
  judge: Judge,
  search: Search,
  rules: readonly Judged[],
): Steps<readonly Judged[]> {
  let core: readonly Judged[] = [];
  for (;;) {
    const found = yield* search.least(core, WIDE);
    // Cut off, nobody knows whether what was gathered excludes each other.
    if (judge.effort.isCut) return [];
    if (!found) break;
    const next = rules.find(
      (rule) => !core.includes(rule) && judge.objects(rule, found.assignment),
    );
    if (next === undefined) break;
    core = [...core, next];
  }
  for (const rule of core) {
    const without = core.filter((other) => other !== rule);
    const found = yield* search.least(without, WIDE);
    if (judge.effort.isCut) break;
    if (!found) core = without;
  }
  return JUDGED_RULES.filter((rule) => core.includes(rule));
}

/** The least of `rule` that is left where the others are met. */
function* mildest(
  judge: Judge,
  search: Search,
  core: readonly Judged[],
  rule: Judged,
): Steps<Found | null> {
  let best = yield* search.least(
    core.filter((other) => other !== rule),
    WIDE,
  );
  let low = 0;
  const last = judge.effort.spent + ENOUGH;
  const isSpent = () => judge.effort.spent >= last;
  for (let step = 0; step < NARROWINGS && best; step++) {
    const finding = judge.finding(rule, best.assignment);
    const high = finding && sizeOf(finding);
    if (high === undefined || high === null || !(high > low)) break;
    const middle = (low + high) / 2;
    const milder = yield* search.least(core, {
      ...WIDE,
      tolerated: new Map([[rule, middle]]),
      isSpent,
    });
    if (milder) best = milder;
    else low = middle;
  }
  return best;
}

/** Only frames that the rig reaches: past them nothing is known, so that nothing would object. */
function* byField(
  bench: Bench,
  rules: readonly Judged[],
  searchOf: (bench: Bench) => Search,
): Steps<readonly Opening[]> {
  const { field } = bench.fields;
  if (field.state !== 'known') return [];
  for (const fieldMm of widerFieldsMm(bench, field.value)) {
    const wider = substitute(bench, {
      wantedMagnification: derive([bench.wantedMagnification], (m) => (m * field.value) / fieldMm),
    });
    // Beyond the reach of the rig next to nothing is known, and so nothing objects.
    if (isOutOfReach(wider, figuresOf(wider))) break;
    const found = yield* searchOf(wider).least(rules);
    if (found) return [{ kind: 'field', fieldMm, assignment: found.assignment }];
  }
  return [];
}

/** In two digits, the last no wider than what the rig reaches. */
function widerFieldsMm({ reach, wantedMagnification: m }: Bench, fieldMm: number) {
  const tried = WIDER.map((times) => Number((fieldMm * times).toPrecision(2)));
  if (!reach.known || !m.known) return tried;
  const most = (fieldMm * m.value) / reach.value[0];
  const digit = 10 ** (Math.floor(Math.log10(most)) - 1);
  const widest = Math.floor(most / digit) * digit;
  const within = tried.filter((wide) => wide < widest);
  return widest > fieldMm ? [...within, widest] : within;
}

function* byLight(
  bench: Bench,
  core: readonly Judged[],
  rules: readonly Judged[],
  searchOf: (bench: Bench) => Search,
): Steps<readonly Opening[]> {
  if (!core.includes('exposure-off') && !core.includes('iso-out-of-range')) return [];
  for (const stops of MORE_LIGHT) {
    const found = yield* searchOf(brighter(bench, stops)).least(rules);
    if (found) return [{ kind: 'light', stops, assignment: found.assignment }];
  }
  return [];
}
