import type { Chain } from './arrangement.ts';
import { magnificationAt } from './chain.ts';
import { presentFocalMm, presentGapMm, subjectToSensorMm } from './focal-length.ts';
import type { LensPart } from './parts.ts';
import { extent, firstSolution } from './solve.ts';

/** m0 with the ring at its closest; 0 for a lens that has no ring to turn. */
export function closestRing(lens: LensPart): number {
  return lens.closest?.magnification ?? 0;
}

/**
 * Reach of a chain: the least and largest magnification that its ring can set, normally those at
 * infinity and at the closest setting. A lens without `closest` has one. Undefined where what the chain
 * gives is not known, or nothing real is ever in focus.
 *
 * Magnification grows with m0 for every lens whose focal length shortens or stays as it focuses closer
 * (m1 = m0 + E/f). One that grew longer, or a close-up far ahead of the lens, can turn back on the way;
 * so the whole course is looked at, not its ends alone.
 */
export function reach(chain: Chain): readonly [least: number, most: number] | undefined {
  const course = (ring: number) => magnificationAt(chain, ring);
  const closest = closestRing(chain.lens);
  if (closest === 0) {
    const only = course(0);
    return Number.isNaN(only) ? undefined : [only, only];
  }
  const found = extent(course, 0, closest);
  return found && [found.least, found.most];
}

/** A setting of the ring, and whether what was asked for lies beyond what the ring can set. */
interface RingSetting {
  readonly ringMagnification: number;
  readonly beyond: 'least' | 'most' | undefined;
}

/**
 * The ring setting m0 that gives the total magnification m (> 0); f changes with the ring, so the two
 * are solved together. Where m is out of reach: the setting that comes nearest, and which end it is at.
 * `limits`: the chain's reach, where it is at hand already.
 * Where two settings give the same m, the one nearer to infinity. Undefined as for `reach`.
 */
export function ringFor(
  chain: Chain,
  magnification: number,
  limits = reach(chain),
): RingSetting | undefined {
  if (limits === undefined) return undefined;
  const [least, most] = limits;
  const course = (ring: number) => magnificationAt(chain, ring);
  const closest = closestRing(chain.lens);
  const wanted = Math.min(Math.max(magnification, least), most);
  const beyond = magnification < least ? 'least' : magnification > most ? 'most' : undefined;
  const ringMagnification = firstSolution(course, wanted, 0, closest);
  return { ringMagnification: ringMagnification ?? nearest(course, wanted, closest), beyond };
}

/** A turning point is met only to rounding, and then no change of sign marks it. */
function nearest(course: (ring: number) => number, wanted: number, closest: number): number {
  const miss = (ring: number) => Math.abs(course(ring) - wanted);
  const fine = 4096;
  let best = 0;
  for (let step = 1; step <= fine; step++) {
    const ring = (closest * step) / fine;
    if (!(miss(best) <= miss(ring))) best = ring;
  }
  return best;
}

/**
 * The ring setting at which the ring's scale shows a distance (subject to sensor, mm): that of the lens
 * alone on the body, whatever else is in the chain, since that is what is engraved.
 * Solves f(m0)·(2 + m0 + 1/m0) + gap = distance. Beyond `most`: nearer than the closest setting.
 * A lens without `closest` has only the setting 0.
 */
export function ringForDistance(lens: LensPart, fromSensorMm: number): RingSetting {
  const closest = closestRing(lens);
  if (!Number.isFinite(fromSensorMm)) return { ringMagnification: 0, beyond: undefined };
  if (closest === 0) return { ringMagnification: 0, beyond: 'most' };
  // In reciprocals infinity is a plain 0 at m0 = 0.
  const nearness = (ring: number) =>
    ring === 0
      ? 0
      : 1 / subjectToSensorMm(presentFocalMm(lens, ring), ring, presentGapMm(lens, ring));
  const ring = firstSolution(nearness, 1 / fromSensorMm, 0, closest);
  if (ring !== undefined) return { ringMagnification: ring, beyond: undefined };
  // The closest setting is where the printed distance is met; rounding must not put it out of reach.
  const met = Math.abs(nearness(closest) * fromSensorMm - 1) < 1e-9;
  return { ringMagnification: closest, beyond: met ? undefined : 'most' };
}
