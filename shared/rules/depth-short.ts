import { substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { type Figure, known } from '../figures/figure.ts';
import { markFor, SAME_MARK } from '../figures/marks.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { markAtMost } from '../optics/apertures.ts';
import { setTo } from '../plan/fixes.ts';
import { asFound } from '../say/figures.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { isDarkAndShallow } from './at-odds.ts';
import { USABLE_CONTRAST } from './diffraction-eats-detail.ts';
import { placeWords, relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';
import { sharpWithinMm, softerPrice } from './softer.ts';

/** Accuracy of the paraxial depth: a smaller shortage is no finding. */
const DEAD_BAND = 0.05;

interface Facts {
  readonly depthMm: number;
  readonly neededMm: number;
  readonly effective: number;
  /** The effective f-number was measured. */
  readonly isMeasured: boolean;
  readonly magnification: number;
  /** What is sharp by focus alone, mm; null: all of the depth. */
  readonly sharpMm: number | null;
  /** The shot is too dark as well. */
  readonly isDark: boolean;
  /** null: not named. */
  readonly subject: string | null;
  /**
   * Depth of the subject that a focus pull passes through, and the whole depth; null: no focus
   * pull.
   */
  readonly pull: { readonly travelMm: number; readonly subjectMm: number } | null;
  /** The best compromise, if no aperture gives both depth and detail. */
  readonly conflict: {
    readonly bestEffective: number;
    /** The mark on the lens that is nearest to it; undefined: its apertures are not known. */
    readonly mark: number | undefined;
    readonly blurUm: number;
    readonly blurPixels: number;
  } | null;
}

export const depthShort: ShotRule<Facts> = {
  name: 'depth-short',
  severity: 'warning',
  docs: {
    when: 'the depth of field is less than the subject, its tilt and the move need. The larger of the circle of confusion and the Airy disk sets it. What a focus pull passes through is sharp in its turn; only what lies beyond its ends needs the depth of field. A focus stack needs none of it in one frame.',
    why: 'At close range, depth of field is about 2·c·N_eff/m²: twice the magnification leaves a quarter of the depth. A few degrees of tilt across a wide frame can use up a millimetre.',
    remedy:
      'Stop down as far as diffraction allows, tilt less, or frame wider. If the fall-off is intended, accept it with `allow` and a reason.',
    bad: [
      {
        says: 'wide open on a relief',
        change: { 'shots/frost/aperture': 'f/4', 'shots/frost/iso': '320' },
      },
    ],
    good: [
      { says: 'stopped down', change: { 'shots/frost/aperture': 'f/11' } },
      {
        says: 'a focus pull through all of a deep subject',
        change: {
          'subjects/frost-plate/depth': '15 mm',
          'shots/frost/move': '{ kind: focus-pull, from: 0.38 m, to: 0.4 m, duration: 10 s }',
          'preflight/once/focus-ends-marked': 'open',
        },
      },
      {
        says: 'a focus stack of a deep subject',
        change: {
          'subjects/frost-plate/depth': '15 mm',
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { depthMm, effectiveFNumber, magnification, pixelUm } = figures;
    const needed = depthMm.needed;
    const there = depthThere(figures);
    if (!there.known || !needed.known || !effectiveFNumber.known || !magnification.known) return [];
    if (there.value >= needed.value * (1 - DEAD_BAND)) return [];
    const at = bench.fields.aperture.at;
    const best = figures.bestEffectiveFNumber;
    const atBest = best.known ? contrastAt({ bench, figures }, best.value) : undefined;
    const conflict =
      best.known && pixelUm.known && atBest !== undefined && atBest < USABLE_CONTRAST
        ? {
            bestEffective: best.value,
            mark: markFor(bench, figures, best.value),
            blurUm: figures.leastBlurUm.known ? figures.leastBlurUm.value : 0,
            blurPixels: figures.leastBlurUm.known ? figures.leastBlurUm.value / pixelUm.value : 0,
          }
        : null;
    return [
      {
        at,
        facts: {
          depthMm: there.value,
          neededMm: needed.value,
          effective: effectiveFNumber.value,
          isMeasured: effectiveFNumber.measured === true,
          magnification: magnification.value,
          sharpMm: pullDepthIsIt(figures) ? null : sharpWithinMm(figures),
          isDark: isDarkAndShallow(figures),
          subject: bench.subject?.name ?? null,
          pull: pullOf(figures),
          conflict,
        },
        related: () => relatedTo(at, needed, effectiveFNumber),
      },
    ];
  },
  words(facts, say) {
    const { depthMm, neededMm, effective, isMeasured, magnification, sharpMm } = facts;
    const { subject, pull, conflict, isDark } = facts;
    const aperture = asFound(isMeasured ? { measured: true } : {}, say.fNumber(effective));
    const [there, needed] = say.lengths2(depthMm, neededMm);
    return {
      what: pull
        ? message`Depth of field is ${there}; ${subject ?? message`the subject`} needs ${needed} beyond the focus pull.`
        : message`Depth of field is ${there}; ${subject ?? message`the subject`} needs ${needed}.`,
      why:
        (pull
          ? message`The pull covers ${say.length(pull.travelMm)} of ${say.length(pull.subjectMm)}. `
          : '') +
        (sharpMm === null
          ? message`Effective aperture ${aperture} at ${say.magnification(magnification)} magnification.`
          : message`Effective aperture ${aperture} at ${say.magnification(magnification)} magnification; only ${say.length(sharpMm)} is sharp by focus, diffraction softens all of it.`) +
        (conflict
          ? message` No aperture gives enough depth without softening detail. The best compromise is ${say.fNumber(conflict.bestEffective)} effective, with ${say.micrometres(conflict.blurUm)} (${say.pixels(conflict.blurPixels)}) of blur.` +
            nearestWords(conflict.mark, say)
          : '') +
        (isDark
          ? message` Solve this shot (\`lamella solve\`) looks for depth and light together.`
          : ''),
    };
  },
  size: ({ depthMm, neededMm }) => ({ kind: 'length', value: neededMm - depthMm }),
  numbers: ({ depthMm, neededMm, effective, conflict }) => ({
    depthMm,
    neededMm,
    effectiveFNumber: effective,
    ...(conflict && {
      bestEffectiveFNumber: conflict.bestEffective,
      blurUm: conflict.blurUm,
    }),
  }),
  fixes({ at, facts }, view) {
    return [...stopDown(view, at), ...tiltLess(view, facts.neededMm, facts.depthMm)];
  },
};

const nearestWords = (mark: number | undefined, say: Say): string =>
  mark === undefined ? '' : message` The nearest marked f-number is ${say.fNumber(mark)}.`;

/** The depth that is sharp at one time; in a focus pull, the depth beyond its ends. */
export const depthThere = ({ pullDepthMm, usableDepthMm }: ShotFigures): Figure<number> =>
  pullDepthMm.known ? pullDepthMm : usableDepthMm;

const pullDepthIsIt = ({ pullDepthMm }: ShotFigures): boolean => pullDepthMm.known;

const pullOf = ({ pullTravelMm, wholeDepthMm }: ShotFigures): Facts['pull'] =>
  pullTravelMm.known && wholeDepthMm.known
    ? { travelMm: pullTravelMm.value, subjectMm: wholeDepthMm.value }
    : null;

/** The contrast at half Nyquist that another effective f-number would leave. */
function contrastAt({ bench, figures }: ShotView, effective: number): number | undefined {
  const { effectiveFNumber } = figures;
  if (!effectiveFNumber.known || !bench.marked.known) return undefined;
  const marked = (bench.marked.value * effective) / effectiveFNumber.value;
  const contrast = figuresOf(substitute(bench, { marked: known(marked) })).contrast;
  return contrast.known ? contrast.value : undefined;
}

/** The widest mark on the lens that gives the depth, never beyond the best f-number for it. */
function stopDown({ bench, figures }: ShotView, at: ShotView['bench']['at']) {
  const { effectiveFNumber, bestEffectiveFNumber: best, depthMm } = figures;
  const { marked } = bench;
  if (!marked.known || !effectiveFNumber.known || !best.known || !depthMm.needed.known) return [];
  const narrowest = (best.value * marked.value) / effectiveFNumber.value;
  for (const mark of bench.marksOnLens) {
    if (mark <= marked.value || mark > narrowest * SAME_MARK) continue;
    const stopped = figuresOf(substitute(bench, { marked: known(mark) }));
    const there = depthThere(stopped);
    const needed = stopped.depthMm.needed;
    if (!there.known || !needed.known) return [];
    if (there.value >= needed.value * (1 - DEAD_BAND))
      return [setTo(message`Stop down to f/${mark}`, at, `f/${mark}`, softerPrice(stopped))];
  }
  const last = markAtMost(narrowest);
  return last !== undefined && last > marked.value && bench.marksOnLens.includes(last)
    ? [
        setTo(
          message`Stop down to f/${last} (the best compromise)`,
          at,
          `f/${last}`,
          softerPrice(figuresOf(substitute(bench, { marked: known(last) }))),
        ),
      ]
    : [];
}

/** The tilt at which the needed depth equals the available depth, rounded down to 0.1°. */
function tiltLess({ bench }: ShotView, neededMm: number, depthMm: number) {
  const { tiltRad } = bench;
  if (!tiltRad.known || tiltRad.value <= 0) return [];
  let low = 0;
  let high = tiltRad.value;
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    const needed = figuresOf(substitute(bench, { tiltRad: known(middle) })).depthMm.needed;
    if (!needed.known) return [];
    if (needed.value <= depthMm) low = middle;
    else high = middle;
  }
  const degrees = Math.floor((low * 1800) / Math.PI) / 10;
  if (degrees <= 0 || neededMm <= 0) return [];
  const at = bench.fields.tilt.at;
  return [
    setTo(
      message`Tilt ${degrees}° (${placeWords(at)}, the most that the depth of field allows)`,
      at,
      `${degrees} deg`,
    ),
  ];
}
