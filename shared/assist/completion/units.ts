/** A number that was typed, with the units that it may have. */
import type { QuantityKind } from '../../quantity/kind.ts';

const NUMBERS =
  /^[-−+]?(?:1\/)?[0-9]+(?:\.[0-9]+)?(?: ?x ?[0-9]+(?:\.[0-9]+)?| to [0-9]+(?:\.[0-9]+)?)?/;

/** Whether a text is a value in its usual spelling, with nothing left to choose. */
export const isWhole = (kind: QuantityKind<unknown>, text: string): boolean => {
  const parsed = kind.parse(text);
  return parsed.ok && parsed.usual === undefined;
};

/** The texts that a kind reads in their usual spelling; empty where no number begins it. */
export function withUnits(kind: QuantityKind<unknown>, typed: string): readonly string[] {
  const number = NUMBERS.exec(typed.replace(/^['"]/, ''))?.[0];
  if (number === undefined) return [];
  if (isWhole(kind, typed) && number !== typed) return [typed];
  const spelt = number.replace(/ ?x ?/, ' x ');
  const made = [
    ...kind.units.flatMap((unit) =>
      unit === 'f/' ? [`f/${spelt}`] : [`${spelt} ${unit}`, `${spelt}${unit}`],
    ),
    ...(kind.units.length === 0 ? [] : [spelt]),
  ];
  return [...new Set(made.filter((text) => isWhole(kind, text)))];
}
