/** A diffuser that a shot puts before a light: the light that it takes. */
import type { Light } from '../plan/generated/types.ts';
import type { Constants } from './constants.ts';
import { derive, type Figure, figureOf, known } from './figure.ts';

/**
 * Stops by which the face of the diffuser is darker than what is known of the light without it. A
 * luminance is that of the lamp's own face: the same flux leaves the larger one, φ = π·L·A of a face
 * that scatters evenly (Lambert, Photometria). Lux and readings count the light of the whole lamp. Of
 * that, a smaller diffuser lets through what falls on it, as its area is to the lamp's.
 *
 * @param lamp the light as it is without the diffuser
 * @param face the size of the diffuser
 */
export function diffusedStops(
  lamp: Light,
  face: Light['emitting-size'],
  { diffuserStops }: Constants,
): Figure<number> {
  const own = areaOf(lamp);
  if (own === undefined) return known(diffuserStops);
  const isFaces = lamp.luminance.state !== 'missing';
  return derive([own, rectangle(face)], (lampMm2, faceMm2) => {
    const larger = Math.log2(faceMm2 / lampMm2);
    return diffuserStops + Math.max(0, isFaces ? larger : -larger);
  });
}

const rectangle = (size: Light['emitting-size']): Figure<number> =>
  derive([figureOf(size, 'emitting-size')], ({ width, height }) => width * height);

/** Undefined: nothing tells which of the two is the larger. */
const areaOf = ({ diameter, 'emitting-size': size }: Light): Figure<number> | undefined =>
  diameter.state === 'missing'
    ? size.state === 'missing'
      ? undefined
      : rectangle(size)
    : derive([figureOf(diameter, 'diameter')], (across) => (Math.PI / 4) * across ** 2);
