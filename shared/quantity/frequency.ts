/** Frequency of the mains or of a lamp's own modulation, in hertz. */
import { later } from '../words/message.ts';
import type { Hertz } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';
import { wordOr } from './word-or.ts';

export const frequency: QuantityKind<Hertz> = scalarKind<Hertz>({
  id: 'frequency',
  title: later`frequency`,
  sign: 'positive',
  units: [
    { usual: 'Hz', also: ['hz', 'HZ', 'hertz', 'Hertz'] },
    { usual: 'kHz', also: ['khz', 'KHz'], times: 1000 },
  ],
  examples: ['50 Hz', '25 kHz'],
});

export const modulation: QuantityKind<Hertz | 'none'> = wordOr(
  {
    id: 'modulation',
    title: later`frequency of modulation, or none`,
    words: { none: ['no'] },
    examples: ['none', '25 kHz'],
  },
  frequency,
);
