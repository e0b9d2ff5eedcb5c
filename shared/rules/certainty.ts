/**
 * How sure a finding is. Sure: it stands even where every uncertain input is at its best. Probable:
 * it stands by the middle of what is known, and an end passes; then it is told one severity lower
 * and names the input that would settle it. What passes in the middle is no finding.
 */

import type { AssumptionId } from '../assumptions/table.ts';
import type { Bench } from '../figures/bench.ts';
import { CATALOGUE, DECLARATIONS } from '../figures/catalogue/catalogue.ts';
import { isNumber, sayFigure } from '../figures/catalogue/say-figure.ts';
import type { End, LaidOut, Pick, Stands, UncertainShot } from '../figures/uncertain.ts';
import type { Width } from '../figures/width.ts';
import { endsWords } from '../say/between.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, message } from '../words/message.ts';
import type { Finding, Observation, RuleCore, Severity, Unsure } from './rule.ts';
import { placeKey, type ShotRule } from './shot-rule.ts';

const LOWER: Readonly<Record<Severity, Severity>> = {
  error: 'warning',
  warning: 'note',
  note: 'hint',
  hint: 'hint',
};

/** One severity lower: what is only probable stops nobody. */
export const lowered = (severity: Severity): Severity => LOWER[severity];

/** @returns undefined where the finding is sure */
export function unsureOf(
  rule: ShotRule<unknown>,
  finding: Finding,
  uncertain: UncertainShot,
): Unsure | undefined {
  if (rule.isStatement) return undefined;
  const { widths } = uncertain;
  const there = (ends: readonly End[]): Observation<unknown> | undefined =>
    observed(rule, finding, uncertain, ends);
  const moves = widths.map((width, index): Moved => {
    if (!mayMove(rule.name, width, uncertain)) return { width, ...UNMOVED };
    const at = (end: End) => there(widths.map((_, other) => (other === index ? end : 0)));
    return movedBy(rule, finding, width, at);
  });
  const unsure = ({ width }: Moved, isOneOfMore: boolean): Unsure => ({
    input: width,
    makes: madeBy(rule.name, uncertain, widths.indexOf(width)),
    isOneOfMore,
  });
  const best = moves.filter(({ better }) => better !== 0);
  if (best.length === 0) return undefined;
  const widest = best.reduce((most, next) => (next.gain > most.gain ? next : most));
  const alone = best.filter(({ passes }) => passes).map((moved) => unsure(moved, false));
  if (alone.length > 0)
    return alone.reduce((most, next) => (spanOf(next) > spanOf(most) ? next : most));
  if (there(moves.map(({ better }) => better)) !== undefined) return undefined;
  return unsure(widest, true);
}

/** How far the input moves the figure that the rule decides by. */
const spanOf = ({ makes }: Unsure): number => (makes ? makes.high - makes.low : 0);

/** What one width does to a finding. */
interface Moved {
  readonly width: Width;
  /** The end at which there is less of it; 0: neither. */
  readonly better: End;
  /** At that end it is gone. */
  readonly passes: boolean;
  /** How much less there is of it, in the unit of its size. */
  readonly gain: number;
}

/** The same finding where the widths stand so; undefined: it passes there, or between here and there. */
function observed(
  rule: ShotRule<unknown>,
  finding: Finding,
  uncertain: UncertainShot,
  ends: readonly End[],
): Observation<unknown> | undefined {
  const at = placeKey(finding.at);
  const found = rule.check(uncertain.at(ends)).find((one) => placeKey(one.at) === at);
  if (!found || !rule.side) return found;
  // Too much at one end and too little at the other: between them it is right.
  return rule.side(found.facts) === rule.side(finding.facts) ? found : undefined;
}

/** Less than this share of a size is rounding. */
const ROUNDING = 1e-6;

const UNMOVED = { better: 0, passes: false, gain: 0 } as const;

/** The end at which there is less of it; what is less at one end is more at the other. */
function movedBy(
  rule: RuleCore<unknown>,
  finding: Finding,
  width: Width,
  at: (end: End) => Observation<unknown> | undefined,
): Moved {
  const sizeIn = (facts: unknown): number => rule.size?.(facts)?.value ?? 0;
  const middle = sizeIn(finding.facts);
  for (const end of [-1, 1] as const) {
    const found = at(end);
    if (!found) return { width, better: end, passes: true, gain: middle };
    const size = sizeIn(found.facts);
    if (size < middle - ROUNDING * Math.abs(middle))
      return { width, better: end, passes: false, gain: middle - size };
  }
  return { width, ...UNMOVED };
}

/** Light that glass takes and what a meter calls right move the exposure, and nothing else. */
const OF_LIGHT: ReadonlySet<AssumptionId | null> = new Set([
  'lens-loss',
  'converter-loss',
  'close-up-loss',
  'polariser-loss',
  'incident-constant',
  'reflected-constant',
]);
/** Where the front of the lens is, and how wide: that decides about room and reflections. */
const OF_THE_RIM: ReadonlySet<AssumptionId | null> = new Set(['flange', 'front-diameter']);

const BY_LIGHT: ReadonlySet<string> = new Set([
  'exposure-off',
  'iso-out-of-range',
  'background-washes',
  'highlight-clips',
]);
const BY_THE_RIM: ReadonlySet<string> = new Set(['no-room', 'lens-reflected']);

/** Bytes decide about cards, which are judged over the whole plan. */
const OF_THE_CARD: AssumptionId = 'still-size';

/** What they decide by needs no lens. */
const BESIDE_THE_LENS: ReadonlySet<string> = new Set([
  'lamp-flicker',
  'head-overloaded',
  'stand-overloaded',
  'boom-may-tip',
  'battery-in-time-lapse',
]);

/** Whether a rule decides by what the frame shows of the plane of focus, and by nothing else of the rig. */
function isByTheFrame(rule: string, { tiltRad, lights }: Bench): boolean {
  const isSquare = tiltRad.known && tiltRad.value === 0;
  return rule === 'uneven-light' && isSquare && lights.known && lights.value.length === 1;
}

/** Whether a width can have a say in a rule: what can't is not tried, since each try costs a shot. */
function mayMove(rule: string, { assumed, low }: Width, uncertain: UncertainShot): boolean {
  if (assumed === OF_THE_CARD) return false;
  if (OF_LIGHT.has(assumed)) return BY_LIGHT.has(rule);
  if (OF_THE_RIM.has(assumed)) return BY_THE_RIM.has(rule);
  if (low.kind !== 'lens-axis') return true;
  if (BESIDE_THE_LENS.has(rule)) return false;
  return !(isByTheFrame(rule, uncertain.middle.bench) && uncertain.keepsFrame);
}

/**
 * The shot at the corners of what is uncertain that a rule may find most in: where the figures that
 * it decides by are least and greatest, alone and together. None of a rule that finds too much and
 * too little: what is right in the middle is best there.
 */
export function cornersFor(rule: ShotRule<unknown>, uncertain: UncertainShot): readonly LaidOut[] {
  if (rule.side || rule.isStatement || uncertain.widths.length === 0) return [];
  const figures = numbersOf(rule.name).flatMap((pick) => uncertain.extremes(pick) ?? []);
  const corners = figures.reduce<readonly Stands[]>(
    (all, { least, most }) => all.flatMap((one) => [joined(one, least), joined(one, most)]),
    [uncertain.widths.map(() => 0)],
  );
  return [...new Set(corners.map((stands) => uncertain.at(stands)))].filter(
    (corner) => corner !== uncertain.middle,
  );
}

/** The rest where one says nothing. */
const joined = (one: Stands, other: Stands): Stands =>
  one.map((stand, index) => (stand === 0 ? (other[index] ?? 0) : stand));

/** A rule decides by no more figures than these, so that its corners stay few. */
const MOST_FIGURES = 2;

function numbersOf(rule: string): readonly Pick[] {
  const picks = CATALOGUE.flatMap(([, entry]): readonly Pick[] => {
    if (entry.kind === 'figure')
      return isNumber(entry) && entry.rules?.includes(rule) ? [entry.of as Pick] : [];
    return Object.entries(entry.parts).flatMap(([part, declared]) =>
      isNumber(declared) && declared.rules?.includes(rule)
        ? [(figures) => entry.of(figures)[part] as ReturnType<Pick>]
        : [],
    );
  });
  return picks.slice(0, MOST_FIGURES);
}

/** The corner where a rule finds most, and what it finds; undefined: as much as in the middle. */
export function worstOf(
  rule: ShotRule<unknown>,
  finding: Finding,
  uncertain: UncertainShot,
): { readonly view: LaidOut; readonly finding: Finding } | undefined {
  const at = placeKey(finding.at);
  let most = rule.size?.(finding.facts)?.value ?? 0;
  let worst: { view: LaidOut; finding: Finding } | undefined;
  for (const view of cornersFor(rule, uncertain))
    for (const found of rule.check(view)) {
      const size = rule.size?.(found.facts)?.value ?? 0;
      if (placeKey(found.at) !== at || size <= most * (1 + ROUNDING)) continue;
      most = size;
      worst = { view, finding: { ...finding, facts: found.facts } };
    }
  return worst;
}

/** The first number that the catalogue says the rule decides by and that the width moves. */
function madeBy(rule: string, uncertain: UncertainShot, index: number): Unsure['makes'] {
  for (const [figure, entry] of CATALOGUE) {
    if (entry.kind !== 'figure' || !isNumber(entry) || !entry.rules?.includes(rule)) continue;
    const [a, b] = ([-1, 1] as const).map((end) => {
      const found = entry.of(uncertain.alone(index, end).figures);
      return found.known ? (found.value as number) : undefined;
    });
    if (a === undefined || b === undefined || a === b) continue;
    return { figure, low: Math.min(a, b), high: Math.max(a, b) };
  }
  return null;
}

/** "Give `loss` of `long-200` to be sure." */
export function settlingWords({ input, makes, isOneOfMore }: Unsure, say: Say): string {
  const { key, of } = input;
  const what = of === null ? inLanguage(key) : message`\`${key}\` of \`${of}\``;
  const settle = settledBy(input, what);
  return [
    settle,
    makes ? madeWords(makes, say) : '',
    isOneOfMore ? message`Other values are uncertain too.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function madeWords({ figure, low, high }: NonNullable<Unsure['makes']>, say: Say): string {
  const declared = DECLARATIONS.get(figure)!;
  const [from, to] = [low, high].map((value) => sayFigure(declared, value, say)) as [
    string,
    string,
  ];
  return message`Its range makes the ${inLanguage(declared.label)} ${endsWords('', from, to)}.`;
}

function settledBy({ assumed, key, group }: Width, what: string): string {
  if (group !== undefined)
    return message`Another row of ${what} makes it surer: \`lamella measure\` names it.`;
  switch (assumed) {
    case null:
      return message`Narrow the range of ${what} to be sure.`;
    case 'iris':
      return message`It depends on how the iris works at close focus: measure \`effective-f-number\` with this rig to be sure.`;
    case 'sheet-loss':
      return message`It depends on the light lost in the polarising sheet: give the light's brightness behind it under \`relight\` to be sure.`;
    case 'diffuser-loss':
      return message`It depends on the light lost in the diffuser: give the light's brightness behind it under \`relight\` to be sure.`;
    case 'incident-constant':
    case 'reflected-constant':
      return message`It depends on the meter constant: a reading through this rig makes it sure.`;
    case 'closest-distance':
    case 'closest-magnification':
      return message`Give \`closest\` with distance and magnification to be sure: ${what} is assumed.`;
    default:
      return key === 'loss'
        ? message`Give ${what}, or take a reading through it, to be sure.`
        : message`Give ${what} to be sure.`;
  }
}
