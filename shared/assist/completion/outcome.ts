/** What a shot comes to, in a few words for a list, and how far from working it is. */

import type { Figure } from '../../figures/figure.ts';
import { HIDDEN } from '../../rules/clear-direction.ts';
import { USABLE_CONTRAST } from '../../rules/diffraction-eats-detail.ts';
import { isoRangeOf, needsIso } from '../../rules/needed-iso.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import { depthPair, exposureWords, sizeWords } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';
import type { TrialShot } from './trial-shot.ts';

export interface Outcome {
  readonly words: string;
  /** 0: nothing is against it. About 1 for what a warning would be given for. */
  readonly rank: number;
}

/** From this rank on it can't be done at all. */
export const IMPOSSIBLE = 20;

type Measure = (view: ShotView, say: Say) => Outcome | null;

/** Third stops are the step of every setting: nothing nearer can be set. */
const RIGHT_WITHIN_STOPS = 1 / 3 + 0.04;
const HELD = 0.95;
const SEEN_FLICKER = 0.02;
const SHARP_PIXELS = 1.05;

const where = <T>(figure: Figure<T>, said: (value: T) => Outcome | null): Outcome | null =>
  figure.known ? said(figure.value) : null;

export const effective: Measure = ({ figures }, say) =>
  where(figures.effectiveFNumber, (n) => ({ words: say.fNumber(n), rank: 0 }));

export const depth: Measure = ({ figures: { usableDepthMm, depthMm } }, say) =>
  where(usableDepthMm, (there) => {
    const { needed } = depthMm;
    if (!needed.known || needed.value === 0)
      return { words: message`DOF ${say.length(there)}`, rank: 0 };
    const [has, wants] = depthPair(there, needed.value, say);
    const short =
      needed.value * HELD > there ? 1 + Math.log2(needed.value / Math.max(there, 1e-6)) : 0;
    return { words: message`DOF ${has}, needs ${wants}`, rank: short };
  });

export const exposure: Measure = (view, say) => {
  const { bench, figures } = view;
  const isOpen =
    bench.fields.iso.state === 'missing' || (bench.iso.known && bench.iso.value === 'auto');
  if (isOpen)
    return where(figures.isoNeeded, (iso) => ({
      words: needsIso(iso, isoRangeOf(bench), say),
      rank: beyondBody(view, iso),
    }));
  return where(figures.exposureErrorStops, (stops) => ({
    words: exposureWords(stops, say),
    rank: Math.abs(stops) <= RIGHT_WITHIN_STOPS ? Math.abs(stops) / 10 : 0.5 + Math.abs(stops),
  }));
};

/** How far an ISO that would be right lies from what the body has, and has clean. */
function beyondBody({ bench: { isoLimits } }: ShotView, iso: number): number {
  const { lowest, highest, cleanTo } = isoLimits;
  const past = (limit: Figure<number>) => (limit.known ? Math.log2(iso / limit.value) : 0);
  if (past(highest) > 0.1) return 5 + past(highest);
  if (past(lowest) < -0.1) return 1 - past(lowest);
  return past(cleanTo) > 0.1 ? 0.5 + past(cleanTo) : 0;
}

export const contrast: Measure = ({ figures }, say) =>
  where(figures.contrast, (share) => ({
    words: message`contrast ${say.number(share)}`,
    rank: share >= USABLE_CONTRAST ? 0 : 0.3 + (USABLE_CONTRAST - share),
  }));

export const angle: Measure = ({ figures }, say) =>
  where(figures.shutterAngleDeg, (degrees) => ({
    words: `${say.number(degrees)}°`,
    rank: degrees > 360.5 ? IMPOSSIBLE : Math.abs(Math.log2(degrees / 180)) / 20,
  }));

export const flicker: Measure = ({ figures }, say) =>
  where(figures.worstFlicker, ({ residual, lampHz }) =>
    lampHz === 0
      ? null
      : residual <= 1e-9
        ? { words: message`no flicker`, rank: 0 }
        : {
            words: message`${say.percent(residual)} flicker`,
            rank: residual > SEEN_FLICKER ? 1 + residual : residual,
          },
  );

export const smear: Measure = ({ figures }, say) =>
  where(figures.smearPx, (pixels) =>
    pixels < 0.05
      ? null
      : {
          words: message`motion blur ${say.number(pixels)} px`,
          rank: pixels > SHARP_PIXELS ? 0.3 + Math.log2(pixels) / 2 : 0,
        },
  );

export const magnification: Measure = ({ figures }, say) =>
  where(figures.magnification, (m) => ({ words: say.magnification(m), rank: 0 }));

export const field: Measure = ({ figures }, say) =>
  where(figures.fieldMm, (size) => ({
    words: Number.isFinite(size[0]) ? sizeWords(size, say) : message`endless`,
    rank: Number.isFinite(size[0]) ? 0 : 5,
  }));

export const room: Measure = ({ figures }, say) =>
  where(figures.workingDistanceMm, (mm) => ({
    words: message`${say.length(mm)} working distance`,
    rank: mm < 0 ? IMPOSSIBLE : mm < 20 ? 1 : 0,
  }));

/** Whether the rig gets there at all. */
export const reached: Measure = ({ bench, figures }) =>
  bench.wantedAt && bench.reach.known && !figures.magnification.known
    ? { words: message`out of reach`, rank: 1.5 * IMPOSSIBLE }
    : null;

export const clearOfLens: Measure = ({ bench, figures }, say) => {
  const { leastTiltRad, greatestTiltByDepthRad } = figures;
  if (!bench.tiltRad.known || !leastTiltRad.known) return null;
  const tilt = Math.abs(bench.tiltRad.value);
  const over = tilt - leastTiltRad.value;
  if (over < -0.00175)
    return {
      words: message`lens reflected, needs ${say.angle(leastTiltRad.value)}`,
      rank: 1 - over,
    };
  const most = greatestTiltByDepthRad.known ? greatestTiltByDepthRad.value : Infinity;
  return {
    words: message`${say.angle(over)} clear of the lens`,
    rank: tilt > most ? 0 : over / 100,
  };
};

export const frameLit: Measure = ({ figures: { darkFrame } }, say) =>
  where(darkFrame, ({ share }) =>
    share > 0.01
      ? { words: message`${say.percent(share)} of the frame black`, rank: 1 + share }
      : null,
  );

/** Whether a light stands in the lens, or in its view. */
export const unobstructed: Measure = ({ figures }) =>
  where(figures.lightInTheWay, ({ clearanceMm, hiddenShare, light }) =>
    clearanceMm <= 0 || hiddenShare > HIDDEN
      ? { words: message`${light} in the way`, rank: IMPOSSIBLE }
      : null,
  );

/** Whether take and settling fit in the life of a film; twice that can't be had. */
export const withinLife: Measure = ({ figures }, say) =>
  where(figures.shareOfLife, (share) => ({
    words:
      share > 1
        ? message`${say.number(share)} film lifetimes`
        : message`${say.percent(share)} of film lifetime`,
    rank: share > 2 ? IMPOSSIBLE : share > 1 ? share : 0,
  }));

/** All that is known of the shot by these measures; their ranks add up. */
export function outcomeOf(shot: TrialShot, measures: readonly Measure[]): Outcome {
  const known = measures.flatMap((measure) => measure(shot.now, shot.say) ?? []);
  return {
    words: known.map(({ words }) => words).join(' · '),
    rank: known.reduce((sum, { rank }) => sum + rank, 0),
  };
}
