/** Stops of light: factors of two. */
import { later } from '../words/message.ts';
import type { Stops } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

const ALSO = ['stop', 'Stops', 'EV', 'ev'];
/** As stops are understood, best first. */
export const STOP_UNITS: readonly string[] = ['stops', ...ALSO];
/** More than any glass, filter or dimmer takes: a larger bare number is something else. */
const MOST_LIKELY = 20;

export const stops: QuantityKind<Stops> = scalarKind<Stops>({
  id: 'stops',
  title: later`stops`,
  sign: 'zero-up',
  units: [{ usual: 'stops', one: 'stop', also: ALSO }],
  likelyUnits: (value) => (value > MOST_LIKELY ? [] : ['stops']),
  examples: ['2 stops', '0.3 stops'],
});
