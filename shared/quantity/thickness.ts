/** Thickness of a film, or the range it drains through, in nanometres. */
import { later } from '../words/message.ts';
import type { Nm, Range } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { unitRange } from './unit-range.ts';

export const thicknessRange: QuantityKind<Range<Nm>> = unitRange<Nm>({
  id: 'thickness-range',
  title: later`film thickness`,
  units: [
    { usual: 'nm', also: ['NM', 'nanometre', 'nanometres', 'nanometer', 'nanometers'] },
    { usual: 'um', also: ['\u00b5m', '\u03bcm'], times: 1000 },
  ],
  examples: ['80 to 700 nm', '300 nm'],
  single: true,
  likelyUnits: (value) => (value < 10 ? ['um', 'nm'] : ['nm']),
});
