/** Values of the day as the language writes them. */
import { kindOf, type QuantityId } from '../quantity/index.ts';

/** The text in its usual spelling; undefined: it is no such quantity. */
export function usualText(kind: QuantityId, text: string): string | undefined {
  const { parse, rough } = kindOf(kind);
  const parsed = parse(text);
  if (parsed.ok) return parsed.usual ?? text;
  const range = rough?.parse(text);
  return range?.ok ? (range.usual ?? text) : undefined;
}

/** Whether two texts say the same: as a quantity where both are one, else letter for letter. */
export function saysSame(a: string, b: string, kind: QuantityId | null): boolean {
  if (a === b) return true;
  if (kind === null) return false;
  const [one, other] = [kindOf(kind).parse(a), kindOf(kind).parse(b)];
  return one.ok && other.ok && JSON.stringify(one.value) === JSON.stringify(other.value);
}

/** Stops over, negative under, of a text that the day was read with. */
export function stopsOf(text: string): number {
  const { parse, rough } = kindOf('over-under');
  const [exact, range] = [parse(text), rough?.parse(text)];
  return Number(exact.ok ? exact.value : range?.ok ? range.value : 0);
}
