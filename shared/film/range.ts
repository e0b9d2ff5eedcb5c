/** Guards of the formulas' ranges: outside them a RangeError that names symbol and value. */

export function requireWithin(name: string, value: number, from: number, to: number): void {
  if (!(value >= from && value <= to))
    throw new RangeError(`${name} must be ${from} to ${to}, and is ${value}`);
}
