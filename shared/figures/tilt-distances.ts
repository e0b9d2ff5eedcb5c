/** The window of tilts of a flat mirror-like subject over the working distances of its rig. */
import { type Bench, substitute } from './bench.ts';
import { figuresOf } from './compute.ts';
import { known, silent } from './figure.ts';
import type { MirrorWindow, ShotFigures } from './shot-figures.ts';

export interface WindowAt {
  readonly workingDistanceMm: number;
  readonly fieldWidthMm: number;
  readonly window: MirrorWindow;
  /** What the depth alone allows. */
  readonly byDepthRad: number;
}

/** Frames this much narrower and wider than the shot's own are looked at, as far as the rig goes. */
const TIMES = 2;
const STEPS = 5;

/**
 * The same shot with its frame wider and narrower, nearest first; the lights stay where they are.
 * Empty where the window isn't known as the shot is set.
 */
export function windowsByDistance(bench: Bench, figures: ShotFigures): readonly WindowAt[] {
  const here = windowAt(figures);
  const { magnification, reach } = figures;
  if (!here || !magnification.known || !reach.known) return [];
  const [least, most] = reach.value;
  const m = magnification.value;
  const towards = (end: number): readonly number[] =>
    Math.abs(Math.log(end / m)) < SAME
      ? []
      : Array.from({ length: STEPS }, (_, step) => m * (end / m) ** ((step + 1) / STEPS));
  const others = [
    ...towards(Math.max(least * WITHIN, m / TIMES)),
    ...towards(Math.min(most / WITHIN, m * TIMES)),
  ];
  return [here, ...others.flatMap((one) => windowAt(figuresOf(framed(bench, one))) ?? [])].sort(
    (a, b) => a.workingDistanceMm - b.workingDistanceMm,
  );
}

/** Not on the end of the reach itself, where rounding decides. */
const WITHIN = 1.001;
/** As logarithms: frames this near to each other are one. */
const SAME = 0.02;

const framed = (bench: Bench, magnification: number): Bench =>
  substitute(bench, {
    wantedMagnification: known(magnification),
    wantedRing: silent,
    wantedAt: undefined,
  });

function windowAt({
  tiltWindow,
  workingDistanceMm,
  fieldMm,
  greatestTiltByDepthRad: byDepth,
}: ShotFigures): WindowAt | null {
  if (!tiltWindow.known || !workingDistanceMm.known || !fieldMm.known || !byDepth.known)
    return null;
  const [width] = fieldMm.value;
  if (!(workingDistanceMm.value > 0) || !Number.isFinite(workingDistanceMm.value + width))
    return null;
  return {
    workingDistanceMm: workingDistanceMm.value,
    fieldWidthMm: width,
    window: tiltWindow.value,
    byDepthRad: byDepth.value,
  };
}
