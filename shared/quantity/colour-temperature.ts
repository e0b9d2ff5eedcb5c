/** Colour temperature in kelvin, and white balance, which may be left to the body. */
import { later } from '../words/message.ts';
import type { Kelvin } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';
import { wordOr } from './word-or.ts';

export const colourTemperature: QuantityKind<Kelvin> = scalarKind<Kelvin>({
  id: 'colour-temperature',
  title: later`colour temperature`,
  sign: 'positive',
  units: [{ usual: 'K', also: ['k', 'Kelvin', 'kelvin'] }],
  examples: ['5600 K', '3200 K'],
});

export const whiteBalance: QuantityKind<Kelvin | 'auto'> = wordOr(
  {
    id: 'white-balance',
    title: later`white balance`,
    words: { auto: ['AUTO', 'automatic'] },
    examples: ['5600 K', 'auto'],
  },
  colourTemperature,
);
