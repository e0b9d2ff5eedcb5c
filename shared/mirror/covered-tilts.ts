/**
 * The tilts at which a light fills the whole frame of a flat film, nothing black and no soft edge:
 * between those at which the patch that the frame needs touches the light's two edges along the
 * tilt.
 */
import { filmSurface, type TiltAxis } from './film-surface.ts';
import { STEEPEST_TILT_RAD } from './least-tilt.ts';
import { coversFrame, type FrameView, spareAround } from './patch.ts';
import type { Source } from './source.ts';

interface LitTilts {
  readonly leastRad: number;
  readonly greatestRad: number;
}

/** The patch moves by almost exactly twice the tilt, so a few secant steps end at rounding. */
const STEPS = 12;
const CLOSE_MM = 1e-6;

type Edge = 'leftMm' | 'rightMm' | 'bottomMm' | 'topMm';

/**
 * Least and greatest such tilt, 0 to 60°, rad.
 *
 * @returns null where the light doesn't fill the frame even at half its own angle, where the patch
 *   lies on its middle
 * @throws RangeError where frame, distance or light have no extent
 */
export function coveredTiltsRad(view: FrameView, source: Source, about: TiltAxis): LitTilts | null {
  const [near, far]: readonly [Edge, Edge] =
    about === 'level' ? ['bottomMm', 'topMm'] : ['leftMm', 'rightMm'];
  const straight = (about === 'level' ? source.upRad : source.acrossRad) / 2;
  const spare = (tilt: number, edge: Edge): number =>
    spareAround(view, filmSurface(tilt, about), source)?.[edge] ?? Number.NaN;
  const touching = (edge: Edge, away: -1 | 1): number => {
    let a = straight;
    let b = straight + away * 0.01;
    let [atA, atB] = [spare(a, edge), spare(b, edge)];
    for (let step = 0; step < STEPS && Math.abs(atB) > CLOSE_MM && atA !== atB; step += 1) {
      const next = b - (atB * (b - a)) / (atB - atA);
      [a, atA, b] = [b, atB, next];
      atB = spare(b, edge);
    }
    return b;
  };
  const covers = (tilt: number): boolean => coversFrame(view, filmSurface(tilt, about), source);
  if (straight < 0 || !covers(straight)) return null;
  return {
    leastRad: endOf(covers, straight, touching(near, -1), 0),
    greatestRad: endOf(covers, straight, touching(far, 1), STEEPEST_TILT_RAD),
  };
}

/** How near an end has to be to be taken from the secant's word. */
const SURE_RAD = 1e-5;

/**
 * Where covering ends between `lit` and `limit`: at the guess, where just inside it is covered and
 * just outside not; else found by halving, as where another edge gives out before, or the patch
 * runs off past the light's plane.
 */
function endOf(
  covers: (tilt: number) => boolean,
  lit: number,
  guess: number,
  limit: number,
): number {
  if (covers(limit)) return limit;
  const out = Math.sign(limit - lit) * SURE_RAD;
  const between = (guess - lit) * out > 0 && (limit - guess) * out > 0;
  if (between && covers(guess - out) && !covers(guess + out)) return guess;
  let [good, bad] = [lit, limit];
  for (let step = 0; step < 30; step += 1) {
    const tilt = (good + bad) / 2;
    if (covers(tilt)) good = tilt;
    else bad = tilt;
  }
  return good;
}
