/** The mark on the lens that keeps the most fine detail over the depth that a shot needs. */
import { contrastOverDepth } from '../optics/defocus-contrast.ts';
import { nyquistPerMm } from '../optics/diffraction.ts';
import type { Bench } from './bench.ts';
import type { ShotFigures } from './shot-figures.ts';

export interface BestContrast {
  readonly marked: number;
  /** Contrast at the ends of the depth needed, 0 to 1, there and at the aperture that is set. */
  readonly ends: number;
  readonly endsAsSet: number;
}

/** Less contrast than this nobody misses. */
const SEEN = 0.05;

/** Whether one would see what the set aperture loses against the best. */
export const isSeen = ({ ends, endsAsSet }: BestContrast): boolean => ends - endsAsSet > SEEN;

/** null: no depth is needed, something is not known, or no mark leaves any contrast there. */
export function bestContrast(
  { marked, marksOnLens }: Bench,
  figures: ShotFigures,
): BestContrast | null {
  const { pixelUm, magnification, effectiveFNumber, depthMm } = figures;
  const { needed } = depthMm;
  if (!marked.known || !pixelUm.known || !magnification.known) return null;
  if (!effectiveFNumber.known || !needed.known || !(needed.value > 0)) return null;
  // Of the effective f-number, which may have been measured, not of the trace.
  const ratio = effectiveFNumber.value / marked.value;
  const pattern = {
    depthMm: needed.value,
    magnification: magnification.value,
    cyclesPerMm: nyquistPerMm(pixelUm.value) / 2,
  };
  const at = (n: number): number => contrastOverDepth(pattern, [n * ratio])[0]!.ends;
  const best = marksOnLens
    .map((n) => ({ marked: n, ends: at(n) }))
    .reduce<{ marked: number; ends: number } | null>(
      (most, one) => (one.ends > (most?.ends ?? 0) ? one : most),
      null,
    );
  return best && { ...best, endsAsSet: Math.max(0, at(marked.value)) };
}

/** Contrast at the ends of the depth needed, 0 to 1; null: none is needed, or not known. */
export function contrastAtEnds(figures: ShotFigures): number | null {
  const { pixelUm, magnification, effectiveFNumber, depthMm } = figures;
  const { needed } = depthMm;
  if (!pixelUm.known || !magnification.known || !effectiveFNumber.known) return null;
  if (!needed.known || !(needed.value > 0)) return null;
  const pattern = {
    depthMm: needed.value,
    magnification: magnification.value,
    cyclesPerMm: nyquistPerMm(pixelUm.value) / 2,
  };
  return contrastOverDepth(pattern, [effectiveFNumber.value])[0]!.ends;
}
