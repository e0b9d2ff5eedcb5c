/** A diffuser that a shot puts before a light: the light that it takes. */
import type { Light } from '../plan/generated/types.ts';
import type { Constants } from './constants.ts';
import { derive, type Figure, figureOf, known } from './figure.ts';

/**
 * Stops by which the face of the diffuser is darker than what is known of the light without it. A
 * luminance is that of the lamp's own face: the same flux leaves the larger one, φ = π·L·A of a face
 * that scatters evenly (Lambert, Photometria). Lux and readings count the light of the whole lamp.
 *
 * @param lamp the light as it is without the diffuser
 * @param face the size of the diffuser
 */
export function diffusedStops(
  lamp: Light,
  face: Light['emitting-size'],
  { diffuserStops }: Constants,
): Figure<number> {
  if (lamp.luminance.state === 'missing') return known(diffuserStops);
  return derive(
    [areaOf(lamp), rectangle(face)],
    (own, behind) => diffuserStops + Math.max(0, Math.log2(behind / own)),
  );
}

const rectangle = (size: Light['emitting-size']): Figure<number> =>
  derive([figureOf(size, 'emitting-size')], ({ width, height }) => width * height);

const areaOf = ({ diameter, 'emitting-size': size }: Light): Figure<number> =>
  diameter.state === 'missing'
    ? size.state === 'missing'
      ? // Nothing tells that the diffuser is the larger.
        known(Number.POSITIVE_INFINITY)
      : rectangle(size)
    : derive([figureOf(diameter, 'diameter')], (across) => (Math.PI / 4) * across ** 2);
