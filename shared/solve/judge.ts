/**
 * What the real rules say of a shot set otherwise: the bench is substituted, the rules are run on
 * it, acceptances, severities and precedence apply as they do to the plan as it stands.
 */
import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { type Figure, known } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ifKnown } from '../plan/field.ts';
import type { Sec } from '../quantity/brands.ts';
import { type Allowances, accept } from '../rules/acceptance.ts';
import { isJudged, missingChecks } from '../rules/checks-called-for.ts';
import { PRECEDENCE } from '../rules/precedence.ts';
import { ruleNamed, SHOT_RULES } from '../rules/registry.ts';
import { type Finding, relatedIn, type Severity } from '../rules/rule.ts';
import type { ShotRule, ShotView } from '../rules/shot-rule.ts';
import {
  type Assignment,
  type Choice,
  type Choices,
  isPresent,
  type LightChoice,
  presentOf,
  type Setting,
} from './choice.ts';
import type { Effort } from './effort.ts';
import { JUDGED, type Judged } from './judged.ts';

/** What the plan says on findings. */
export interface House {
  readonly allow: Allowances;
  readonly severities: ReadonlyMap<string, Severity>;
}

/** Which finding stands, if one does, and whether it is an error or a warning. */
interface Verdict {
  readonly finding: Finding;
  readonly loud: boolean;
}

/** By rule: the size of its finding up to which it is no objection. */
export type Tolerated = ReadonlyMap<string, number>;

const NONE: Tolerated = new Map();

export const sizeOf = ({ rule, facts }: Finding): number | undefined =>
  ruleNamed(rule)?.size?.(facts)?.value;

export function isTolerated(finding: Finding, tolerated: Tolerated): boolean {
  const most = tolerated.get(finding.rule);
  const size = sizeOf(finding);
  return most !== undefined && size !== undefined && size <= most;
}

const RULES = new Map(SHOT_RULES.map((rule) => [rule.name, rule]));

/** By rule: those whose finding explains it. */
const SILENCERS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.keys(JUDGED).map((rule) => [
    rule,
    Object.keys(PRECEDENCE).filter((other) => PRECEDENCE[other]!.includes(rule)),
  ]),
);

const isLoud = (severity: Severity): boolean => severity === 'error' || severity === 'warning';

export class Judge {
  readonly #bench: Bench;
  readonly #house: House;
  readonly #corners: ReadonlyMap<Judged, readonly Bench[]>;
  readonly #present: Assignment;
  readonly #isAuto: boolean;
  readonly #views = new Map<string, ShotView>();
  readonly #verdicts = new Map<string, Verdict | null>();
  readonly #keys = new Map<unknown, number>();
  readonly #staysKnown = new Map<LightChoice, boolean>();
  /** How many times as much it costs to trace light. */
  readonly #dear: number;
  /** What may still be asked; who searches looks at it. */
  effort: Effort;

  /**
   * @param effort what may be asked
   * @param corners by rule: the shot where what is uncertain may leave most for it to find; it has to
   *   be met there too
   */
  constructor(
    bench: Bench,
    choices: Choices,
    house: House,
    effort: Effort,
    corners: ReadonlyMap<Judged, readonly Bench[]> = new Map(),
  ) {
    this.effort = effort;
    this.#dear = bench.subject?.fields.sag.state === 'known' ? TIMES_BOWED : 1;
    this.#bench = bench;
    this.#corners = corners;
    this.#house = house;
    this.#present = presentOf(choices);
    this.#isAuto = bench.iso.known && bench.iso.value === 'auto';
  }

  /** Whether the plan says nothing else of a rule: neither accepts it nor makes it quiet. */
  isPlain(rule: Judged): boolean {
    const said = [this.#bench.fields.allow, this.#house.allow];
    return !this.#isQuieted(rule) && said.every((allow) => !ifKnown(allow)?.has(rule));
  }

  /** Bench and figures with some settings of `assignment` and the present ones for the rest. */
  view(assignment: Assignment, read: readonly Setting[] = ALL): ShotView {
    const solved = this.#only(assignment, read);
    const key = this.#key(solved, ALL);
    const known = this.#views.get(key);
    if (known) return known;
    this.effort.spend(COST_OF_VIEW);
    const bench = solvedBench(this.#bench, solved);
    const view = { bench, figures: figuresOf(bench) };
    // Large, and soon asked for again or never.
    if (this.#views.size >= MOST_VIEWS) this.#views.clear();
    this.#views.set(key, view);
    return view;
  }

  /** What `rule` finds, whether or not another finding explains it. */
  finding(rule: Judged, assignment: Assignment): Finding | null {
    return this.#found(rule, assignment)?.finding ?? null;
  }

  /** What `rule` finds; null: nothing that would be shown. */
  verdict(rule: Judged, assignment: Assignment): Verdict | null {
    const own = this.#found(rule, assignment);
    if (!own) return null;
    for (const other of SILENCERS.get(rule) ?? []) {
      if (!Object.hasOwn(JUDGED, other)) continue;
      if (this.#found(other, assignment)) return null;
    }
    return own;
  }

  /**
   * Whether `rule` finds an error or a warning that no quiet finding explains, and that is more
   * than is tolerated of it.
   */
  objects(rule: Judged, assignment: Assignment, tolerated: Tolerated = NONE): boolean {
    const own = this.#found(rule, assignment);
    if (!own?.loud || isTolerated(own.finding, tolerated)) return false;
    return !(SILENCERS.get(rule) ?? []).some((other) => {
      if (!Object.hasOwn(JUDGED, other) || !this.#isQuieted(other)) return false;
      const explained = this.#found(other, assignment);
      return explained !== null && !explained.loud;
    });
  }

  /** Whether findings of `rule` may be explained by one that is less than a warning. */
  isQuietable(rule: Judged): boolean {
    return (SILENCERS.get(rule) ?? []).some((other) => this.#isQuieted(other));
  }

  /** Whether a rule's finding may be less than a warning although it explains others. */
  #isQuieted(rule: string): boolean {
    const severity = this.#house.severities.get(rule);
    return severity !== undefined && !isLoud(severity);
  }

  #found(rule: Judged, assignment: Assignment): Verdict | null {
    const read = rule === 'iso-out-of-range' && this.#isAuto ? ALL : JUDGED[rule]!;
    const key = `${rule} ${this.#key(assignment, read)}`;
    const before = this.#verdicts.get(key);
    if (before !== undefined) return before;
    this.#spendOn(rule);
    const now = this.of(RULES.get(rule)!, this.view(assignment, read));
    const worst = now?.loud ? now : (this.#inCorners(rule, this.#only(assignment, read)) ?? now);
    this.#verdicts.set(key, worst);
    return worst;
  }

  /** What a rule finds loudly where what is uncertain is at its worst. */
  #inCorners(rule: Judged, assignment: Assignment): Verdict | undefined {
    for (const corner of this.#corners.get(rule) ?? []) {
      this.#spendOn(rule);
      const bench = solvedBench(corner, assignment);
      const found = this.of(RULES.get(rule)!, { bench, figures: figuresOf(bench) });
      if (found?.loud) return found;
    }
    return undefined;
  }

  /** One rule asked of a view. */
  of(rule: ShotRule<unknown>, view: ShotView): Verdict | null {
    const { bench } = view;
    const findings = rule.check(view).map(
      (seen): Finding => ({
        rule: rule.name,
        severity: this.#house.severities.get(rule.name) ?? seen.severity ?? rule.severity,
        at: seen.at,
        shot: bench.shot,
        facts: seen.facts,
        related: relatedIn(seen),
      }),
    );
    if (findings.length === 0) return null;
    const own = { name: bench.shot, allow: bench.fields.allow };
    const kept = accept(findings, own, this.#house.allow, ruleNamed).findings.filter(
      (one) => one.rule === rule.name,
    );
    const finding = kept.find(({ severity }) => isLoud(severity)) ?? kept[0];
    return finding ? { finding, loud: isLoud(finding.severity) } : null;
  }

  /**
   * Whether what is known with the present lights stays known with others, and no more checks are
   * called for: a finding that nobody can work out any more is not cleared.
   */
  staysKnown({ light }: Assignment): boolean {
    const known = this.#staysKnown.get(light);
    if (known !== undefined) return known;
    const before = this.view(this.#present);
    const after = this.view({ ...this.#present, light });
    const stays = isPresent(light) || (keepsKnown(before, after) && callsForNoMore(before, after));
    this.#staysKnown.set(light, stays);
    return stays;
  }

  /**
   * Whether what is known as the shot is set now stays known as it would be set. A rule is silent of
   * what it doesn't know, so a search would take every unknown for a way out.
   */
  keepsKnown(assignment: Assignment): boolean {
    this.effort.spend(COST_OF_KNOWN * this.#dear);
    return keepsKnown(this.view(this.#present), this.view(assignment));
  }

  #spendOn(rule: Judged): void {
    const cost = COST[rule];
    this.effort.spend(cost === undefined ? COST_OF_OTHERS : cost * this.#dear);
  }

  #only(assignment: Assignment, read: readonly Setting[]): Assignment {
    const present = this.#present;
    const of = <S extends Setting>(setting: S): Assignment[S] =>
      read.includes(setting) ? assignment[setting] : present[setting];
    return {
      aperture: of('aperture'),
      shutter: of('shutter'),
      iso: of('iso'),
      tilt: of('tilt'),
      light: of('light'),
    };
  }

  #key(assignment: Assignment, read: readonly Setting[]): string {
    return read.map((setting) => this.#idOf(assignment[setting])).join(' ');
  }

  #idOf(choice: unknown): number {
    const known = this.#keys.get(choice);
    if (known !== undefined) return known;
    this.#keys.set(choice, this.#keys.size);
    return this.#keys.size - 1;
  }
}

/** Rules that cost more than others, which trace light or lay out the mirror, in units of effort. */
const COST: Readonly<Record<Judged, number>> = {
  'source-too-small': 16,
  'lens-reflected': 16,
  'no-room': 6,
  'background-washes': 6,
  'exposure-off': 6,
  'depth-short': 1.5,
};
const COST_OF_OTHERS = 0.3;
/** A film that bows is traced ray by ray. */
const TIMES_BOWED = 8;
const COST_OF_VIEW = 0.2;
/** Whether light and exposure stay known: the light is traced for it. */
const COST_OF_KNOWN = 16;

/** Views kept at a time. */
const MOST_VIEWS = 64;

const ALL: readonly Setting[] = ['aperture', 'shutter', 'iso', 'tilt', 'light'];

/** Figures that findings about light rest on. */
const WEIGHED = [
  'exposureErrorStops',
  'isoNeeded',
  'flickerResidual',
  'darkFrame',
  'strayRatio',
] as const satisfies readonly (keyof ShotFigures)[];

const keepsKnown = (before: ShotView, after: ShotView): boolean =>
  WEIGHED.every((name) => !before.figures[name].known || after.figures[name].known);

function callsForNoMore(before: ShotView, after: ShotView): boolean {
  const missing = ({ bench }: ShotView) =>
    isJudged(bench) ? missingChecks(bench).map(({ name }) => name) : [];
  const then = new Set(missing(before));
  return missing(after).every((check) => then.has(check));
}

function solvedBench(bench: Bench, assignment: Assignment): Bench {
  const { aperture, shutter, iso, tilt, light } = assignment;
  const set = <V>(choice: Choice<V>, now: Figure<V>): Figure<V> =>
    isPresent(choice) ? now : known(choice.value, now.known ? now.from : []);
  return substitute(bench, {
    marked: set(aperture, bench.marked),
    shutter: isPresent(shutter)
      ? bench.shutter
      : known({ kind: 'time', seconds: shutter.value as Sec }),
    iso: set(iso, bench.iso),
    tiltRad: set(tilt, bench.tiltRad),
    lights: isPresent(light) ? bench.lights : light.value,
  });
}
