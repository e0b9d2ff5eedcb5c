/** The factor of a converter: `2x`. */
import { later } from '../words/message.ts';
import type { Factor } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const factor: QuantityKind<Factor> = scalarKind<Factor>({
  id: 'factor',
  title: later`factor`,
  sign: 'positive',
  units: [{ usual: 'x', also: ['X', '\u00d7'], tight: true }],
  examples: ['2x', '1.4x'],
});
