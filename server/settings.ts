/** The settings that the server reads: how things are shown, never what is found. */
import type { LengthUnit } from '../shared/say/say.ts';

const ALIGNS = ['tidy', 'keep'] as const;
const UNITS: readonly LengthUnit[] = ['mm', 'inches'];

/** As a client sends them: anything. */
export interface SentSettings {
  readonly lengths?: unknown;
  readonly lenses?: unknown;
  readonly align?: unknown;
}

export class Settings {
  /** The unit that lengths are shown in. */
  lengths: LengthUnit = 'mm';
  /** Whether the state of each shot stands over it. */
  lenses = true;
  /** What formatting does to columns that were aligned by hand. */
  align: 'tidy' | 'keep' = 'tidy';

  constructor(sent: SentSettings) {
    this.change(sent);
  }

  /** @returns whether something shows otherwise now; what can't be a setting changes nothing */
  change(sent: SentSettings | null | undefined): boolean {
    const lengths = UNITS.find((unit) => unit === sent?.lengths) ?? this.lengths;
    const lenses = typeof sent?.lenses === 'boolean' ? sent.lenses : this.lenses;
    this.align = ALIGNS.find((align) => align === sent?.align) ?? this.align;
    if (lengths === this.lengths && lenses === this.lenses) return false;
    this.lengths = lengths;
    this.lenses = lenses;
    return true;
  }
}
