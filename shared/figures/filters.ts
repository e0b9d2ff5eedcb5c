/** Filters as part of the rig: what they add to its length. */
import { behindFilters, type Chain } from '../optics/arrangement.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known } from './figure.ts';

/**
 * How far the filters move the front of the rig forward, mm; a filter without a length counts as
 * 0.
 */
export function filtersLengthMm(filters: Bench['filters']): Figure<number> {
  if (!filters.known) return filters;
  const lengths = filters.value
    .filter(({ fields }) => fields.length.state !== 'missing')
    .map(({ fields, name }) => figureOf<number>(fields.length, name));
  if (lengths.length === 0) return known(0);
  return derive([filters, ...lengths], (_, ...each) =>
    (each as readonly number[]).reduce((sum, length) => sum + length, 0),
  );
}

/**
 * The rig's chain with the filters of the shot. If the filters are unknown, only the position of
 * the front is.
 */
export function chainBehind(chain: Figure<Chain>, filters: Bench['filters']): Figure<Chain> {
  const length = filtersLengthMm(filters);
  if (!length.known) return derive([chain], (it) => behindFilters(it, undefined));
  return length.value === 0
    ? chain
    : derive([chain, length], (it, lengthMm) => behindFilters(it, lengthMm));
}
