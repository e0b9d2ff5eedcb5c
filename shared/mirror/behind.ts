/** A light behind the subject, seen through it or past it. */
import type { FrameView } from './patch.ts';
import { cut, cutToRectangle, moments, type Point2 } from './polygon.ts';
import { planeAt, type Source, sourceOutline } from './source.ts';
import { between } from './vector.ts';

/** Whether a light stands behind the plane of focus. */
export const isBehind = ({ distanceMm, upRad, acrossRad }: Omit<Source, 'face'>): boolean =>
  planeAt(distanceMm, upRad, acrossRad).centre[2] < 0;

/**
 * Share of the frame, 0 to 1, before which a light stands: where a straight ray from the middle of
 * the pupil through the frame meets its face. All of it is a bright field, none a dark one.
 * Exact for a polygon; a thin subject bends no rays aside.
 */
export function filledFromBehind(
  { widthMm, heightMm, pupilDistanceMm: u }: FrameView,
  source: Source,
): number {
  const behind = cut(sourceOutline(source), (p) => -p[2], between);
  const seen = behind.map((p): Point2 => {
    const t = u / (u - p[2]);
    return [p[0] * t, p[1] * t];
  });
  const { area } = moments(cutToRectangle(seen, widthMm / 2, heightMm / 2));
  return Math.min(1, Math.abs(area) / (widthMm * heightMm));
}
