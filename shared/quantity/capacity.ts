/** Capacity of cards and memories, inside in bytes; decimal prefixes, as cards are labelled. */
import { later } from '../words/message.ts';
import type { Bytes } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const capacity: QuantityKind<Bytes> = scalarKind<Bytes>({
  id: 'capacity',
  title: later`capacity`,
  sign: 'positive',
  units: [
    { usual: 'GB', also: ['gb', 'Gb', 'gigabytes'], times: 1e9 },
    { usual: 'TB', also: ['tb', 'terabytes'], times: 1e12 },
    { usual: 'MB', also: ['mb', 'megabytes'], times: 1e6 },
  ],
  examples: ['128 GB', '1 TB'],
});
