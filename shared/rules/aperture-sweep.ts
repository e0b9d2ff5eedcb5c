/**
 * A shot over the apertures of its lens: its figures at each, and the stretches where its limits
 * are met. The shot's own rules judge every aperture, with what the plan accepts, so that a chart
 * can't contradict a finding.
 */
import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { accept } from './acceptance.ts';
import { apertureNotOnLens } from './aperture-not-on-lens.ts';
import { depthShort } from './depth-short.ts';
import { diffractionEatsDetail } from './diffraction-eats-detail.ts';
import { exposureOff } from './exposure-off.ts';
import { isoOutOfRange } from './iso-out-of-range.ts';
import { type Finding, relatedIn } from './rule.ts';
import type { ShotRule, ShotView } from './shot-rule.ts';

/** What limits an aperture. */
export type ApertureLimit = 'lens' | 'depth' | 'detail' | 'exposure' | 'iso';

export const LIMIT_RULES: Readonly<Record<ApertureLimit, ShotRule<unknown>>> = {
  lens: apertureNotOnLens as ShotRule<unknown>,
  depth: depthShort as ShotRule<unknown>,
  detail: diffractionEatsDetail as ShotRule<unknown>,
  exposure: exposureOff as ShotRule<unknown>,
  iso: isoOutOfRange as ShotRule<unknown>,
};

const LIMITS = Object.keys(LIMIT_RULES) as readonly ApertureLimit[];
const NAMED = new Map(Object.values(LIMIT_RULES).map((rule) => [rule.name, rule]));

export interface AtAperture {
  readonly marked: number;
  readonly figures: ShotFigures;
  /** Limits that are missed here, with the shot set as it is. */
  readonly missed: ReadonlySet<ApertureLimit>;
  /** Limits that would be missed here if the plan didn't accept it. */
  readonly accepted: ReadonlySet<ApertureLimit>;
  /** The same as `missed` where the body chooses the ISO. */
  readonly missedByAuto: ReadonlySet<ApertureLimit>;
}

/** Marked f-numbers from the widest to the narrowest. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Halvings of a third of a stop on the way to where a limit is reached: to 1/48 of a stop. */
const HALVINGS = 4;

export class ApertureSweep {
  readonly #view: ShotView;
  readonly #made = new Map<number, AtAperture>();
  readonly range: Stretch;
  /** Third-stop marks and both ends of the lens's range, widest first. */
  readonly marks: readonly number[];

  constructor(view: ShotView, range: Stretch) {
    this.#view = view;
    this.range = range;
    const inside = view.bench.marksOnLens.filter((n) => n > range.from && n < range.to);
    this.marks = [range.from, ...inside, range.to];
  }

  /** The shot with its aperture set to this mark and everything else as it is. */
  at(marked: number): AtAperture {
    const before = this.#made.get(marked);
    if (before) return before;
    const { bench, figures: now } = this.#view;
    const isSet = bench.marked.known && bench.marked.value === marked;
    const there = isSet
      ? bench
      : substitute(bench, { marked: known(marked, bench.marked.known ? bench.marked.from : []) });
    const figures = isSet ? now : figuresOf(there);
    const made = {
      marked,
      figures,
      ...judged({ bench: there, figures }),
      // Neither depth nor the ISO needed follow from the ISO that is set.
      missedByAuto: judged({ bench: substitute(there, { iso: known('auto') }), figures }).missed,
    };
    this.#made.set(marked, made);
    return made;
  }

  /**
   * Where none of these limits is missed. Between two neighbouring marks every limit is taken to
   * be reached at most once.
   */
  stretches(
    limits: readonly ApertureLimit[],
    which: 'missed' | 'missedByAuto' = 'missed',
  ): readonly Stretch[] {
    const holds = (marked: number): boolean =>
      limits.every((one) => !this.at(marked)[which].has(one));
    const found: { from: number; to: number }[] = [];
    let before: number | undefined;
    for (const mark of this.marks) {
      const isOpen = before !== undefined && holds(before);
      if (holds(mark)) {
        if (isOpen) found.at(-1)!.to = mark;
        else
          found.push({ from: before === undefined ? mark : turn(holds, mark, before), to: mark });
      } else if (isOpen) found.at(-1)!.to = turn(holds, before!, mark);
      before = mark;
    }
    return found;
  }
}

/** The last f-number on the way from one that holds to one that doesn't. */
function turn(holds: (marked: number) => boolean, good: number, bad: number): number {
  let [last, past] = [good, bad];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = Math.sqrt(last * past);
    if (holds(middle)) last = middle;
    else past = middle;
  }
  return last;
}

function judged(view: ShotView): Pick<AtAperture, 'missed' | 'accepted'> {
  const verdicts = LIMITS.map((limit) => [limit, verdictOf(LIMIT_RULES[limit], view)] as const);
  const those = (wanted: Verdict) =>
    new Set(verdicts.flatMap(([limit, verdict]) => (verdict === wanted ? [limit] : [])));
  return { missed: those('missed'), accepted: those('accepted') };
}

type Verdict = 'met' | 'accepted' | 'missed';

function verdictOf(rule: ShotRule<unknown>, view: ShotView): Verdict {
  const { bench } = view;
  const seen = rule.check(view);
  if (seen.length === 0) return 'met';
  const findings = seen.map(
    (one): Finding => ({
      rule: rule.name,
      severity: one.severity ?? rule.severity,
      at: one.at,
      shot: bench.shot,
      facts: one.facts,
      related: relatedIn(one),
    }),
  );
  const own = { name: bench.shot, allow: bench.fields.allow };
  const house = bench.source.reader.plan('allow');
  const kept = accept(findings, own, house, (name) => NAMED.get(name)).findings;
  return kept.some((one) => one.rule === rule.name) ? 'missed' : 'accepted';
}

/** null: the range of the lens isn't known, or is no range. */
export function apertureSweep(view: ShotView): ApertureSweep | null {
  const { apertureRange, marked } = view.bench as Bench;
  if (!apertureRange.known || !marked.known) return null;
  const { from, to } = apertureRange.value;
  return from < to ? new ApertureSweep(view, { from, to }) : null;
}
