/**
 * Lenses as they are published, and what a ruler would read of them: traced surface by surface.
 *
 * Double Gauss and reversed telephoto: open prescriptions of the optical design library optiland
 * (https://github.com/HarrisonKramer/optiland, samples DoubleGauss and ReverseTelephoto), glasses by
 * their catalogue's n_d. Telephoto f/5.6: M. Laikin, Lens Design, 4th ed., p. 91.
 */
import type { ReadingKind } from '../../../shared/lens-fit/reading.ts';
import { focalOf, lengthOf, type Prescription, scaled, tracedAt } from './prescription.ts';
import type { Random } from './random.ts';

const PLANE = Number.POSITIVE_INFINITY;

export const DOUBLE_GAUSS: Prescription = {
  name: 'double Gauss',
  iris: 5,
  surfaces: [
    [56.20238, 8.75, 1.62229],
    [152.2858, 0.5, 1],
    [37.68262, 12.5, 1.60738],
    [PLANE, 3.8, 1.60342],
    [24.2313, 16.369445, 1],
    [PLANE, 13.747957, 1],
    [-28.37731, 3.8, 1.60342],
    [PLANE, 11, 1.62041],
    [-37.92546, 0.5, 1],
    [177.41176, 7, 1.62041],
    [-79.41143, 61.487536, 1],
  ],
};

export const TELEPHOTO: Prescription = {
  name: 'telephoto',
  iris: 3,
  surfaces: [
    [0.8589, 0.2391, 1.5168],
    [-2.6902, 0.09, 1.66446],
    [3.0318, 0.0481, 1],
    [PLANE, 1.0347, 1],
    [-0.5715, 0.09, 1.50847],
    [-0.7423, 0.1005, 1.78582],
    [-1.1433, 0.0156, 1],
    [-17.0388, 0.0793, 1.71736],
    [-2.7695, 2.4796, 1],
  ],
};

export const REVERSED: Prescription = {
  name: 'reversed telephoto',
  iris: 8,
  surfaces: [
    [1.69111096, 0.0825968, 1.62278],
    [0.94414496, 0.8, 1],
    [4.32100401, 0.080256, 1.62296],
    [1.78117621, 0.5, 1],
    [2.64050282, 0.2763816, 1.66446],
    [-3.86177348, 0.1, 1],
    [1.05627661, 0.2, 1.4645],
    [-4.06933311, 0.2001384, 1],
    [PLANE, 0.06688, 1],
    [-2.61246583, 0.064372, 1.69895],
    [0.99117409, 0.3, 1],
    [9.0304596, 0.1874312, 1.6779],
    [-1.35680743, 2.35130547, 1],
  ],
};

/** What a lens is sold as, the magnification that it focuses down to, and tubes that suit it. */
export const LENSES = [
  { of: DOUBLE_GAUSS, by: 1, sold: 100, closest: 0.5, tubes: [36, 20, 68] },
  { of: TELEPHOTO, by: 40, sold: 200, closest: 0.25, tubes: [36, 20, 68] },
  { of: REVERSED, by: 14, sold: 28, closest: 0.2, tubes: [8, 5, 12] },
] as const;

export interface Sold {
  readonly of: Prescription;
  readonly by: number;
  readonly sold: number;
  readonly closest: number;
  readonly tubes: readonly [measured: number, short: number, long: number];
}

export const FLANGE_MM = 20;
export const SENSOR_MM = { width: 36, height: 24 };

/** The real thing: the whole lens moves when its ring turns. */
export function real({ of, by, closest }: Sold) {
  const lens = scaled(of, by);
  const { focalMm, backMm } = focalOf(lens);
  return {
    focalMm,
    closest,
    lengthMm: backMm + lengthOf(lens) - FLANGE_MM,
    growsMm: focalMm * closest,
    at: (tubeMm: number, ring: number) => tracedAt(lens, backMm + focalMm * ring + tubeMm),
  };
}
export type Real = ReturnType<typeof real>;

export const trueValue = (traced: ReturnType<typeof tracedAt>, { kind }: ReadingKind): number => {
  switch (kind) {
    case 'field':
      return SENSOR_MM.width / traced.magnification;
    case 'magnification':
      return traced.magnification;
    case 'from-sensor':
      return traced.fromSensorMm;
    case 'working-distance':
      return traced.workingMm;
    case 'light':
      return traced.lightStops;
  }
};

/** One standard deviation of a ruler: half of what a value is taken to be right to. */
export const usualSigma = ({ kind }: ReadingKind, value: number): number =>
  kind === 'field' ? Math.max(0.005 * value, 0.3) / 2 : kind === 'light' ? 0.05 : 1;

/** Box-Muller. */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random.between(0, 1))) * Math.cos(2 * Math.PI * random.between(0, 1));
