/** Electrical power of a lamp, in watts. */
import { later } from '../words/message.ts';
import type { Watt } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const power: QuantityKind<Watt> = scalarKind<Watt>({
  id: 'power',
  title: later`power`,
  sign: 'positive',
  units: [
    { usual: 'W', also: ['w', 'watt', 'watts', 'Watt', 'Watts'] },
    { usual: 'kW', also: ['kw', 'KW'], times: 1000 },
  ],
  examples: ['60 W', '2 kW'],
});
