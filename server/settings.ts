/** The settings that the server reads: how things are shown, never what is found. */
import { HINT_KINDS, type HintKind, LENS_KINDS, type LensKind } from '../shared/api/beside-text.ts';
import type { LengthUnit } from '../shared/say/say.ts';

const ALIGNS = ['tidy', 'keep'] as const;
const UNITS: readonly LengthUnit[] = ['mm', 'inches'];

/** As a client sends them: anything. */
export interface SentSettings {
  readonly lengths?: unknown;
  readonly codeLens?: unknown;
  /** The same by an older name. */
  readonly lenses?: unknown;
  /** Yes or no, by kind. */
  readonly codeLenses?: unknown;
  /** Yes or no, by kind; yes or no alone: of all kinds. */
  readonly hints?: unknown;
  readonly align?: unknown;
}

export class Settings {
  /** The unit that lengths are shown in. */
  lengths: LengthUnit = 'mm';
  /** Whether the state of each shot stands over it. */
  lenses = true;
  hintsLeftOut: ReadonlySet<HintKind> = new Set();
  lensesLeftOut: ReadonlySet<LensKind> = new Set();
  /** What formatting does to columns that were aligned by hand. */
  align: 'tidy' | 'keep' = 'tidy';

  constructor(sent: SentSettings) {
    this.change(sent);
  }

  /** @returns whether something shows otherwise now; what can't be a setting changes nothing */
  change(sent: SentSettings | null | undefined): boolean {
    const before = this.#shown();
    this.lengths = UNITS.find((unit) => unit === sent?.lengths) ?? this.lengths;
    const lenses = [sent?.codeLens, sent?.lenses].find((one) => typeof one === 'boolean');
    if (typeof lenses === 'boolean') this.lenses = lenses;
    this.hintsLeftOut = leftOut(HINT_KINDS, this.hintsLeftOut, sent?.hints);
    this.lensesLeftOut = leftOut(LENS_KINDS, this.lensesLeftOut, sent?.codeLenses);
    this.align = ALIGNS.find((align) => align === sent?.align) ?? this.align;
    return this.#shown() !== before;
  }

  /** Whether any kind is shown over shots. */
  get showsLenses(): boolean {
    return this.lenses && this.lensesLeftOut.size < LENS_KINDS.length;
  }

  #shown(): string {
    return [this.lengths, this.lenses, ...this.hintsLeftOut, '', ...this.lensesLeftOut].join(' ');
  }
}

/** The kinds that are not shown: as they were, but for those that are said to be. */
function leftOut<K extends string>(
  kinds: readonly K[],
  before: ReadonlySet<K>,
  sent: unknown,
): ReadonlySet<K> {
  if (typeof sent === 'boolean') return new Set(sent ? [] : kinds);
  const said = (typeof sent === 'object' ? sent : null) as Readonly<Record<string, unknown>> | null;
  return new Set(
    kinds.filter((kind) => {
      const isShown = said?.[kind];
      return typeof isShown === 'boolean' ? !isShown : before.has(kind);
    }),
  );
}
