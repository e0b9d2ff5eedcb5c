/**
 * The tilts at which a light fills the whole frame of a flat film, nothing black and no soft edge:
 * between those at which the patch that the frame needs touches the light's two edges along the
 * tilt. The quick companion of `litTiltsRad`, which lets a share of the frame stay black.
 */
import { filmSurface, type TiltAxis } from './film-surface.ts';
import { STEEPEST_TILT_RAD } from './least-tilt.ts';
import type { LitTilts } from './lit-tilts.ts';
import { coversFrame, type FrameView, spareAround } from './patch.ts';
import type { Source } from './source.ts';

/** The patch moves by almost exactly twice the tilt, so a few secant steps end at rounding. */
const STEPS = 12;
const CLOSE_MM = 1e-6;

type Edge = 'leftMm' | 'rightMm' | 'bottomMm' | 'topMm';

/**
 * Least and greatest such tilt, 0 to 60°, rad.
 *
 * @returns null where no tilt about this axis lets the light fill the frame
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
  const ends = [
    Math.max(0, touching(near, -1)),
    Math.min(STEEPEST_TILT_RAD, touching(far, 1)),
  ] as const;
  const middle = (ends[0] + ends[1]) / 2;
  const lit = [middle, straight].find((tilt) => tilt >= 0 && covers(tilt));
  if (lit === undefined) return null;
  return { leastRad: pulledIn(covers, lit, ends[0]), greatestRad: pulledIn(covers, lit, ends[1]) };
}

/** The end itself, or short of it where one of the other edges gives out before: the patch widens. */
function pulledIn(covers: (tilt: number) => boolean, lit: number, end: number): number {
  const inside = end + (lit - end) * 1e-3;
  if (covers(inside)) return end;
  let [good, bad] = [lit, end];
  for (let step = 0; step < 24; step += 1) {
    const tilt = (good + bad) / 2;
    if (covers(tilt)) good = tilt;
    else bad = tilt;
  }
  return good;
}
