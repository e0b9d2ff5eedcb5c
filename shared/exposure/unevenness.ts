import { illuminanceAt, illuminancePerLuminance, type Vector } from './rectangle-source.ts';

/** A flat, evenly glowing face that lights a diffuse subject. */
interface LightingFace {
  /** Corners in order around it, mm, seen from the subject's middle. */
  readonly outline: readonly Vector[];
  /** What it gives the subject's middle, in any unit of light that all faces share; more than 0. */
  readonly atMiddle: number;
}

/**
 * How uneven faces light a diffuse plane, stops from its brightest place to its darkest:
 * log2(E_most/E_least) over `places`, E = Σ atMiddle·w(p)/w(0), w the E/L of a face there. Under a
 * small lamp square before the middle E falls off as cos⁴ of the angle from it. Infinity where a
 * place gets no light.
 * Source: `illuminancePerLuminance` at each place.
 *
 * @param faces at least one; each gives the middle light
 * @param places of the plane through the middle, mm; at least one
 * @param normal of the plane, of unit length
 */
export function unevenStops(
  faces: readonly LightingFace[],
  places: readonly Vector[],
  normal: Vector,
): number {
  const scaled = faces.map(({ outline, atMiddle }) => ({
    outline,
    luminance: atMiddle / illuminancePerLuminance(outline, normal),
  }));
  let [most, least] = [0, Number.POSITIVE_INFINITY];
  for (const place of places) {
    let given = 0;
    for (const { outline, luminance } of scaled)
      given += luminance * illuminanceAt(outline, place, normal);
    most = Math.max(most, given);
    least = Math.min(least, given);
  }
  return Math.log2(most / least);
}
