/** Luminance, cd/m². */
import { later } from '../words/message.ts';
import type { Nit } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const luminance: QuantityKind<Nit> = scalarKind<Nit>({
  id: 'luminance',
  title: later`luminance`,
  sign: 'positive',
  units: [{ usual: 'cd/m2', also: ['cd/m\u00b2', 'cd/m^2', 'nit', 'nits', 'nt'] }],
  examples: ['3000 cd/m2', '12 cd/m2'],
});
