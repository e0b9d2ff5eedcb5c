/** The order of quantities in a list that is read and not typed into: by their value. */
import { kindOf, type QuantityId } from '../../quantity/index.ts';
import type { Proposal } from './item.ts';

/** Places from 0, by the text: numbers by their value, then all else as it came. */
export function placesByValue(
  of: QuantityId,
  found: readonly Proposal[],
): ReadonlyMap<string, number> {
  const kind = kindOf(of);
  const sized = found.map(({ text }) => {
    const exact = kind.parse(text);
    return { text, size: exact.ok ? sizeOf(exact.value) : null };
  });
  const numbers = sized.filter(({ size }) => size !== null);
  numbers.sort((a, b) => (a.size as number) - (b.size as number));
  const others = sized.filter(({ size }) => size === null);
  return new Map([...numbers, ...others].map(({ text }, index) => [text, index]));
}

/** null: a word, or nothing that is more or less than another. */
function sizeOf(value: unknown): number | null {
  if (typeof value === 'number') return value;
  if (typeof value !== 'object' || value === null) return null;
  const first = Object.values(value).find((part) => typeof part === 'number');
  return first === undefined ? null : (first as number);
}
