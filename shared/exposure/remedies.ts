import type { Settings } from './ev.ts';

/** What each setting would have to become, changed alone, to close an error of exposure. */
interface Remedies {
  readonly timeS: number;
  readonly iso: number;
  /** The marked f-number; exact, see optics/apertures.ts for the marks. */
  readonly fNumber: number;
  /** Stops that the light must change by; negative: less. */
  readonly lightStops: number;
  /** How many lights like the present one that would be; 0.5: half of it. */
  readonly lightFactor: number;
}

/**
 * Each single change that closes an error of e stops (positive: too much light): t·2^−e, S·2^−e, N·2^(e/2)
 * or light by −e stops. Valid whatever the effective f-number, since it keeps its ratio to the marked one.
 * Source: H = E·t and E ∝ 1/N².
 */
export function remediesFor(errorStops: number, { timeS, iso, fNumber }: Settings): Remedies {
  const lighten = 2 ** -errorStops;
  return {
    timeS: timeS * lighten,
    iso: iso * lighten,
    fNumber: fNumber * 2 ** (errorStops / 2),
    lightStops: 0 - errorStops,
    lightFactor: lighten,
  };
}

/** ISO settings in third stops that bodies carry; common practice. */
export const MARKED_ISO: readonly number[] = [
  25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000,
  2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000, 25600, 32000, 40000, 51200, 64000,
  80000, 102400,
];

/** The mark nearest in stops to a value (> 0), of a series. */
export function nearestMark(series: readonly number[], value: number): number {
  const off = (mark: number) => Math.abs(Math.log2(mark / value));
  return series.reduce((best, mark) => (off(mark) < off(best) ? mark : best));
}

/** The marked ISO nearest in stops. */
export function nearestIso(iso: number): number {
  return nearestMark(MARKED_ISO, iso);
}
