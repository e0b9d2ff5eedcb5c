/** The film's first maximum: where a growing film first returns the most light. */
import { filmTristimulus, type PreparedFilm } from './tristimulus.ts';

interface FirstMaximum {
  readonly thicknessNm: number;
  /** Luminance factor there, a perfect white 100. */
  readonly y: number;
}

/** Thickness and Y of the first maximum; about λ/(4·n·cos θ′), whatever light and index. */
export function firstMaximum(film: PreparedFilm): FirstMaximum {
  const middle = film.bands[Math.floor(film.bands.length / 2)];
  if (middle === undefined) throw new RangeError('a film without wavelengths');
  // Y rises once and falls once before the first minimum, where half the phase is π.
  let low = 0;
  let high = (0.9 * Math.PI) / middle.halfPhase;
  for (let step = 0; step < 40; step += 1) {
    const a = low + (high - low) * 0.45;
    const b = low + (high - low) * 0.55;
    if (filmTristimulus(film, a).y < filmTristimulus(film, b).y) low = a;
    else high = b;
  }
  const thicknessNm = (low + high) / 2;
  return { thicknessNm, y: filmTristimulus(film, thicknessNm).y };
}
