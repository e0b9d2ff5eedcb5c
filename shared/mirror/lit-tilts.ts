/** The tilts at which a light that stands where it stands fills a flat film: the window by light. */
import { coverage } from './coverage.ts';
import { filmSurface, type TiltAxis } from './film-surface.ts';
import { STEEPEST_TILT_RAD } from './least-tilt.ts';
import type { FrameView } from './patch.ts';
import { leastWhere } from './solve.ts';
import type { Source } from './source.ts';

export interface LitTilts {
  readonly leastRad: number;
  readonly greatestRad: number;
}

/**
 * Least and greatest tilt, 0 to 60°, that lose no more than `lostShare` of the frame's light. The
 * film looks straight at the light's middle at half the light's own angle, and from there the
 * black only grows.
 *
 * @param lostShare share of the frame's light that may be lost, 0 to 1
 * @returns null where the light can't fill the frame at any tilt about this axis
 */
export function litTiltsRad(
  view: FrameView,
  source: Source,
  about: TiltAxis,
  lostShare: number,
): LitTilts | null {
  const lit = (tilt: number): boolean =>
    coverage(view, filmSurface(tilt, about), source).lostShare <= lostShare;
  const half = (about === 'level' ? source.upRad : source.acrossRad) / 2;
  const straight = Math.min(STEEPEST_TILT_RAD, Math.max(0, half));
  if (!lit(straight)) return null;
  const leastRad = leastWhere(lit, 0, straight) ?? straight;
  const greatestRad =
    leastWhere((tilt) => !lit(tilt), straight, STEEPEST_TILT_RAD) ?? STEEPEST_TILT_RAD;
  return { leastRad, greatestRad };
}
