/** One value that was measured of a lens in one setup, and what a lens would give there. */
import { arrangeChain } from '../optics/arrangement.ts';
import { traceChain } from '../optics/chain.ts';
import type { ChainPart, LensPart } from '../optics/parts.ts';
import { closestRing, ringForDistance } from '../optics/reach.ts';

/** Where the lens stood: what is on either side of it, and where its ring was. */
export interface Setup {
  /** Body, tubes and converters, from the sensor forward. */
  readonly behind: readonly ChainPart[];
  /** Close-up lenses. */
  readonly before: readonly ChainPart[];
  /** A number: the distance on its scale, mm. */
  readonly ring: 'closest' | 'infinity' | number;
}

export type ReadingKind =
  | { readonly kind: 'field'; readonly sensorWidthMm: number }
  | { readonly kind: 'magnification' | 'from-sensor' | 'working-distance' }
  /** 2·log2(N_eff / N), stops. */
  | { readonly kind: 'light' };

/**
 * Field and distances in mm, magnification as such, light in stops; NaN: nothing is in focus, or
 * what it needs of the parts is not known.
 */
export function predicted(lens: LensPart, setup: Setup, reading: ReadingKind): number {
  const arranged = arrangeChain([...setup.behind, lens, ...setup.before]);
  if (!arranged.ok) return Number.NaN;
  const trace = traceChain(arranged.chain, ringAt(lens, setup.ring));
  switch (reading.kind) {
    case 'field':
      return reading.sensorWidthMm / (trace.magnification ?? Number.NaN);
    case 'magnification':
      return trace.magnification ?? Number.NaN;
    case 'from-sensor':
      return trace.subjectToSensorMm ?? Number.NaN;
    case 'working-distance':
      return trace.workingDistanceMm ?? Number.NaN;
    case 'light':
      return trace.lightLossStops;
  }
}

function ringAt(lens: LensPart, ring: Setup['ring']): number {
  if (ring === 'infinity') return 0;
  return ring === 'closest' ? closestRing(lens) : ringForDistance(lens, ring).ringMagnification;
}
