/**
 * How far a finding is accepted: a size in the unit that the finding itself speaks in.
 */
import { later } from '../words/message.ts';
import type { Ratio } from './brands.ts';
import { type Either, eitherKind } from './either.ts';
import type { QuantityKind } from './kind.ts';
import { length, mass } from './lengths-and-mass.ts';
import { stops } from './light.ts';
import { angle } from './movement.ts';
import { percent } from './plain.ts';
import { scalarKind } from './scalar.ts';
import { time } from './times.ts';

const pixelCount: QuantityKind<Ratio> = scalarKind<Ratio>({
  id: 'pixel-count',
  title: later`number of pixels`,
  sign: 'positive',
  units: [{ usual: 'px', also: ['pixels', 'pixel'] }],
  examples: ['2 px'],
});

const KINDS = { length, stops, percent, angle, pixels: pixelCount, time, mass } as const;

export type Bound = Either<typeof KINDS>;

export const bound: QuantityKind<Bound> = eitherKind(
  {
    id: 'bound',
    title: later`bound`,
    examples: ['0.6 mm', '1 stop', '2 px', '5 %'],
    likelyUnits: ['mm', 'stops', '%', 'deg'],
  },
  KINDS,
);
