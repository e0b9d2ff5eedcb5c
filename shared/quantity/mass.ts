/** Mass, inside in kilograms. 1 lb = 0.45359237 kg exactly; 16 oz to the lb. */
import { later } from '../words/message.ts';
import type { Kg } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const mass: QuantityKind<Kg> = scalarKind<Kg>({
  id: 'mass',
  title: later`mass`,
  sign: 'positive',
  units: [
    { usual: 'kg', also: ['Kg', 'KG', 'kilogram', 'kilograms'] },
    { usual: 'g', also: ['gram', 'grams'], over: 1000 },
    { usual: 'lb', also: ['lbs', 'pound', 'pounds'], times: 0.45359237 },
    { usual: 'oz', also: ['ounce', 'ounces'], times: 0.028349523125 },
  ],
  examples: ['1.5 kg', '60 g'],
  likelyUnits: (value) => (value < 20 ? ['kg', 'g', 'lb'] : ['g', 'kg']),
});
