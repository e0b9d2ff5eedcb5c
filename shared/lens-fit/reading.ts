/** One value that was measured of a lens in one setup, and what a lens would give there. */
import { arrangeChain } from '../optics/arrangement.ts';
import { measurableAt } from '../optics/chain.ts';
import { type ChainPart, impossibleInput, type LensPart } from '../optics/parts.ts';
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

/** Takes the place of any lens while the parts around it are put in order. */
const ANY_LENS: LensPart = { kind: 'lens', focalMm: 1 };

/**
 * Field and distances in mm, magnification as such, light in stops; NaN: nothing is in focus, or
 * what it needs of the parts is not known.
 */
export const predicted = (lens: LensPart, setup: Setup, reading: ReadingKind): number =>
  predictor(setup, reading)(lens);

/** The same for many lenses in one setup, whose parts are put in order once. */
export function predictor(setup: Setup, reading: ReadingKind): (lens: LensPart) => number {
  const arranged = arrangeChain([...setup.behind, ANY_LENS, ...setup.before]);
  if (!arranged.ok) return () => Number.NaN;
  const { chain } = arranged;
  return (lens) => {
    if (impossibleInput(lens) !== undefined) return Number.NaN;
    const found = measurableAt({ ...chain, lens }, ringAt(lens, setup.ring));
    switch (reading.kind) {
      case 'field':
        return reading.sensorWidthMm / found.magnification;
      case 'magnification':
        return found.magnification;
      case 'from-sensor':
        return found.subjectToSensorMm;
      case 'working-distance':
        return found.workingDistanceMm;
      case 'light':
        return found.lightLossStops;
    }
  };
}

function ringAt(lens: LensPart, ring: Setup['ring']): number {
  if (ring === 'infinity') return 0;
  return ring === 'closest' ? closestRing(lens) : ringForDistance(lens, ring).ringMagnification;
}
