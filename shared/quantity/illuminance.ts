/** Illuminance, lux. 1 klx is 1000 lx. */
import { later } from '../words/message.ts';
import type { Lux } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const illuminance: QuantityKind<Lux> = scalarKind<Lux>({
  id: 'illuminance',
  title: later`illuminance`,
  sign: 'positive',
  units: [
    { usual: 'lx', also: ['lux', 'Lux', 'LX'] },
    { usual: 'klx', also: ['klux'], times: 1000 },
  ],
  examples: ['900 lx', '12000 lx'],
});
