/** Stops of light: factors of two. */
import { later } from '../words/message.ts';
import type { Stops } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const stops: QuantityKind<Stops> = scalarKind<Stops>({
  id: 'stops',
  title: later`stops`,
  sign: 'zero-up',
  units: [{ usual: 'stops', one: 'stop', also: ['stop', 'Stops', 'EV', 'ev'] }],
  examples: ['2 stops', '0.3 stops'],
});
