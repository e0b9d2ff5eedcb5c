/** Guards of the formulas' ranges: outside them a RangeError that names symbol and value. */

export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new RangeError(`${name} must be more than 0, and is ${value}`);
}

export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new RangeError(`${name} must be 0 or more, and is ${value}`);
}
