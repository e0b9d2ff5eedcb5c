/** Speed of turning, inside in radians per second. */
import { later } from '../words/message.ts';
import type { RadPerSec } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const turn: QuantityKind<RadPerSec> = scalarKind<RadPerSec>({
  id: 'turn',
  title: later`speed of turning`,
  sign: 'positive',
  units: [
    { usual: 'deg/s', also: ['\u00b0/s', 'degrees/s', 'deg/sec'], times: Math.PI, over: 180 },
    { usual: 'rpm', also: ['RPM', '1/min'], times: 2 * Math.PI, over: 60 },
  ],
  examples: ['1.5 deg/s', '12 deg/s'],
});
