/** Speed along a line, inside in mm/s. */
import { later } from '../words/message.ts';
import type { MmPerSec } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const speed: QuantityKind<MmPerSec> = scalarKind<MmPerSec>({
  id: 'speed',
  title: later`speed`,
  sign: 'zero-up',
  units: [
    { usual: 'mm/s', also: ['mm/sec', 'MM/s'] },
    { usual: 'cm/s', also: ['cm/sec'], times: 10 },
    { usual: 'm/s', also: ['m/sec'], times: 1000 },
    { usual: 'in/s', also: ['in/sec'], times: 25.4 },
    { usual: 'mm/min', times: 1, over: 60 },
  ],
  examples: ['3 mm/s', '0.5 mm/s'],
});
