/** The one setting that the server reads: the unit that lengths are shown in. */
import type { LengthUnit } from '../shared/rules/say.ts';

const UNITS: readonly LengthUnit[] = ['mm', 'inches'];

export class Settings {
  lengths: LengthUnit;

  constructor(lengths: unknown) {
    this.lengths = asUnit(lengths) ?? 'mm';
  }

  /** @returns whether something is different now; what is no unit changes nothing */
  change(lengths: unknown): boolean {
    const unit = asUnit(lengths);
    if (unit === undefined || unit === this.lengths) return false;
    this.lengths = unit;
    return true;
  }
}

const asUnit = (value: unknown): LengthUnit | undefined => UNITS.find((unit) => unit === value);
