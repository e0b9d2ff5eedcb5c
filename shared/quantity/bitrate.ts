/** Bit rate of a recording, inside in bits per second; decimal prefixes. */
import { later } from '../words/message.ts';
import type { BitsPerSec } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const bitrate: QuantityKind<BitsPerSec> = scalarKind<BitsPerSec>({
  id: 'bitrate',
  title: later`bit rate`,
  sign: 'positive',
  units: [
    { usual: 'Mb/s', also: ['Mbit/s', 'Mbps', 'mbps', 'Mbits/s'], times: 1e6 },
    { usual: 'kb/s', also: ['kbit/s', 'kbps', 'Kb/s', 'Kbps'], times: 1e3 },
    { usual: 'Gb/s', also: ['Gbit/s', 'Gbps'], times: 1e9 },
    { usual: 'MB/s', also: ['Mbyte/s'], times: 8e6 },
  ],
  examples: ['60 Mb/s', '1.2 Gb/s'],
});
