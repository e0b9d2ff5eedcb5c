/** What a light gives straight in front of the middle of its face. */
import { illuminancePerLuminance } from './rectangle-source.ts';

type Face =
  | { readonly shape: 'rectangle'; readonly widthMm: number; readonly heightMm: number }
  | { readonly shape: 'round'; readonly diameterMm: number };

/**
 * Illuminance on a receiver that faces the middle of an evenly glowing face, over the face's
 * luminance, sr. Round of radius r at a distance d: π·r²/(r² + d²); from far away its area over d².
 *
 * @param distanceMm from the middle of the face, > 0
 * Source: J. W. T. Walsh, Photometry, "Illumination from a circular disc source"; of a rectangle as
 * in rectangle-source.ts.
 */
export function faceOnWeight(face: Face, distanceMm: number): number {
  if (face.shape === 'round') {
    const squared = (face.diameterMm / 2) ** 2;
    return (Math.PI * squared) / (squared + distanceMm ** 2);
  }
  const [x, y] = [face.widthMm / 2, face.heightMm / 2];
  const corners = [
    [-x, -y, distanceMm],
    [x, -y, distanceMm],
    [x, y, distanceMm],
    [-x, y, distanceMm],
  ] as const;
  return illuminancePerLuminance(corners, [0, 0, 1]);
}
