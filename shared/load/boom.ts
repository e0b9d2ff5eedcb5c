/** Whether a boom on a stand tips over the edge of its footprint. */

export interface Boom {
  /** What hangs at its end, kg. */
  readonly loadKg: number;
  /** From the stand's axis to the load, mm. */
  readonly reachMm: number;
  /** Distance of the feet across, mm: it tips over an edge half of it from the axis. */
  readonly footprintMm: number;
  /** The stand's own mass, on its axis, kg. */
  readonly standKg: number;
  /** Counterweight, kg, and how far it stands behind the axis, mm. */
  readonly counterweightKg: number;
  readonly counterweightArmMm: number;
}

/**
 * Tipping factor: the moment that holds it down over the moment that tips it, about the edge of the
 * footprint on the load's side. Over 1 it stands; 1.5 is the usual margin (common practice). Infinity
 * where the load stands inside the footprint.
 *
 * Level ground and a load at rest; a push, a cable or uneven feet take from it.
 * Source: moments about the tipping edge.
 */
export function stabilityFactor(boom: Boom): number {
  const edge = boom.footprintMm / 2;
  const tips = boom.loadKg * (boom.reachMm - edge);
  const holds = boom.standKg * edge + boom.counterweightKg * (boom.counterweightArmMm + edge);
  return tips <= 0 ? Number.POSITIVE_INFINITY : holds / tips;
}
