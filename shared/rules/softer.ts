/** Depth that an aperture gives only because diffraction softens all of the picture. */
import type { ShotFigures } from '../figures/shot-figures.ts';
import { message } from '../words/message.ts';

/** Two lengths this near to each other are one. */
const SAME = 1 + 1e-9;

/**
 * What is sharp by focus alone, mm, where the depth of field is larger because the Airy disk
 * exceeds the circle of confusion; null: the depth is all sharp, or not known.
 */
export function sharpWithinMm({ usableDepthMm, depthMm }: ShotFigures): number | null {
  const { total } = depthMm;
  return usableDepthMm.known && total.known && usableDepthMm.value > total.value * SAME
    ? total.value
    : null;
}

/** The price of an aperture that gives the depth by its diffraction; undefined: it has none. */
export function softerPrice(stopped: ShotFigures): string | undefined {
  const { needed } = stopped.depthMm;
  const sharpMm = sharpWithinMm(stopped);
  return sharpMm !== null && needed.known && sharpMm < needed.value
    ? message`everything gets softer`
    : undefined;
}
