import { substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import { markAtMost } from '../optics/apertures.ts';
import { message } from '../words/message.ts';
import { USABLE_CONTRAST } from './diffraction-eats-detail.ts';
import { placeWords, relatedTo, type ShotRule, type ShotView, setTo } from './shot-rule.ts';

/** What the paraxial depth is good to: a shortage smaller than this is none. */
const DEAD_BAND = 0.05;

interface Facts {
  readonly depthMm: number;
  readonly neededMm: number;
  readonly effective: number;
  /** The effective f-number was measured. */
  readonly isMeasured: boolean;
  readonly magnification: number;
  /** null: not named. */
  readonly subject: string | null;
  /** Where no aperture holds both depth and detail: the best compromise. */
  readonly conflict: {
    readonly bestEffective: number;
    readonly blurUm: number;
    readonly blurPixels: number;
  } | null;
}

export const depthShort: ShotRule<Facts> = {
  name: 'depth-short',
  severity: 'warning',
  docs: {
    when: 'the depth of field, judged by the larger of the circle of confusion and the Airy disk, is under what the subject, its tilt and the move need.',
    why: 'Close up the depth tends to 2·c·N_eff/m²: it shrinks with the square of the magnification, and a tilt of a few degrees over a wide frame uses up a millimetre.',
    remedy:
      'Stop down as far as the detail allows, tilt less, frame wider, or accept what falls off with the reason.',
    bad: [
      {
        says: 'wide open on a relief',
        change: { 'shots/frost/aperture': 'f/4', 'shots/frost/iso': '320' },
      },
    ],
    good: [{ says: 'stopped down', change: { 'shots/frost/aperture': 'f/11' } }],
  },
  check({ bench, figures }) {
    const { judgedDepthMm, depthMm, effectiveFNumber, magnification, pixelUm } = figures;
    const needed = depthMm.needed;
    if (!judgedDepthMm.known || !needed.known || !effectiveFNumber.known || !magnification.known)
      return [];
    if (judgedDepthMm.value >= needed.value * (1 - DEAD_BAND)) return [];
    const at = bench.fields.aperture.at;
    const best = figures.bestEffectiveFNumber;
    const atBest = best.known ? contrastAt({ bench, figures }, best.value) : undefined;
    const conflict =
      best.known && pixelUm.known && atBest !== undefined && atBest < USABLE_CONTRAST
        ? {
            bestEffective: best.value,
            blurUm: figures.leastBlurUm.known ? figures.leastBlurUm.value : 0,
            blurPixels: figures.leastBlurUm.known ? figures.leastBlurUm.value / pixelUm.value : 0,
          }
        : null;
    return [
      {
        at,
        facts: {
          depthMm: judgedDepthMm.value,
          neededMm: needed.value,
          effective: effectiveFNumber.value,
          isMeasured: effectiveFNumber.measured === true,
          magnification: magnification.value,
          subject: bench.subject?.name ?? null,
          conflict,
        },
        related: relatedTo(at, needed, effectiveFNumber),
      },
    ];
  },
  words({ depthMm, neededMm, effective, isMeasured, magnification, subject, conflict }, say) {
    const [there, needed] = say.lengths2(depthMm, neededMm);
    return {
      what: message`Depth is ${there}, ${subject ?? message`the subject`} needs ${needed}.`,
      why:
        message`The aperture ${say.worksAs(effective, isMeasured)} at ${say.magnification(magnification)}.` +
        (conflict
          ? message` No aperture holds both depth and detail: best is ${say.fNumber(conflict.bestEffective)} effective, with a blur of ${say.micrometres(conflict.blurUm)} (${say.pixels(conflict.blurPixels)}).`
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

/** The contrast at half Nyquist that another effective f-number would leave. */
function contrastAt({ bench, figures }: ShotView, effective: number): number | undefined {
  const { effectiveFNumber } = figures;
  if (!effectiveFNumber.known || !bench.marked.known) return undefined;
  const marked = (bench.marked.value * effective) / effectiveFNumber.value;
  const contrast = figuresOf(substitute(bench, { marked: known(marked) })).contrast;
  return contrast.known ? contrast.value : undefined;
}

/** The widest mark on the lens that holds the depth, never past the best f-number for it. */
function stopDown({ bench, figures }: ShotView, at: ShotView['bench']['at']) {
  const { effectiveFNumber, bestEffectiveFNumber: best, depthMm } = figures;
  const { marked } = bench;
  if (!marked.known || !effectiveFNumber.known || !best.known || !depthMm.needed.known) return [];
  const narrowest = (best.value * marked.value) / effectiveFNumber.value;
  for (const mark of bench.marksOnLens) {
    if (mark <= marked.value || mark > narrowest * 1.03) continue;
    const stopped = figuresOf(substitute(bench, { marked: known(mark) }));
    const { judgedDepthMm } = stopped;
    const needed = stopped.depthMm.needed;
    if (!judgedDepthMm.known || !needed.known) return [];
    if (judgedDepthMm.value >= needed.value * (1 - DEAD_BAND))
      return [setTo(message`Stop down to f/${mark}`, at, `f/${mark}`)];
  }
  const last = markAtMost(narrowest);
  return last !== undefined && last > marked.value && bench.marksOnLens.includes(last)
    ? [setTo(message`Stop down to f/${last}, the best compromise`, at, `f/${last}`)]
    : [];
}

/** The tilt at which what is needed falls to what there is, rounded down to a tenth of a degree. */
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
      message`Tilt ${degrees}°, what the depth allows (${placeWords(at)})`,
      at,
      `${degrees} deg`,
    ),
  ];
}
