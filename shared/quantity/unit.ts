/** A unit with its spellings, and what it is in the unit that values have inside. */

export interface Unit {
  /** As it is usually written. */
  readonly usual: string;
  /** Other spellings that are understood. */
  readonly also?: readonly string[];
  /** How many of the inside unit one of these is … */
  readonly times?: number;
  /** … or how many of these one of the inside unit is: 18 ms is 18/1000 s to the last bit. */
  readonly over?: number;
  /** As it is written after exactly 1: `1 stop`. */
  readonly one?: string;
  /** Written without a blank: `2x`. */
  readonly tight?: boolean;
}

const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** Source of a pattern for any understood spelling of these units, longest first. */
export const unitsPattern = (units: readonly Unit[]): string =>
  units
    .flatMap((unit) => [unit.usual, ...(unit.also ?? [])])
    .sort((a, b) => b.length - a.length)
    .map(quoted)
    .join('|');

export const spellings = (units: readonly Unit[]): string[] => [
  ...units.map((unit) => unit.usual),
  ...units.flatMap((unit) => unit.also ?? []),
];

export const unitOf = (units: readonly Unit[], written: string): Unit | undefined =>
  units.find((unit) => unit.usual === written || unit.also?.includes(written));

export const inward = (value: number, unit: Unit): number =>
  (value * (unit.times ?? 1)) / (unit.over ?? 1);

export const outward = (value: number, unit: Unit): number =>
  (value * (unit.over ?? 1)) / (unit.times ?? 1);
