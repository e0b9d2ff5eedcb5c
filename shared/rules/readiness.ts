/**
 * Whether a shot is clear. Lens, status bar, sheet and command line all take it from here, and so do
 * their counts of checks.
 */
import type { Bench } from '../figures/bench.ts';
import type { Figure } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { Severity } from './rule.ts';

/** Without these nobody can say whether a shot works. */
export type Vital = 'depth' | 'exposure';

export interface Readiness {
  /** `look`: it has warnings, or lacks something. */
  readonly state: 'ready' | 'look' | 'not-ready';
  readonly unknown: readonly Vital[];
  /** Checks that are called for and in no list, and whose lack nothing accepts. */
  readonly missing: number;
  /** Something that the plan's shots may depend on can't be read: its text, or a file in `use`. */
  readonly partly: boolean;
}

/** What is vital and not known; a figure that the shot has no use for is not missed. */
export function unknownVitals(
  { iso }: Bench,
  { usableDepthMm, exposureErrorStops, isoNeeded }: ShotFigures,
): readonly Vital[] {
  // The error of an exposure that the body evens out says nothing.
  const light = iso.known && iso.value === 'auto' ? isoNeeded : exposureErrorStops;
  return [
    ...(lacks(usableDepthMm) ? ['depth' as const] : []),
    ...(lacks(light) ? ['exposure' as const] : []),
  ];
}

const lacks = (figure: Figure<unknown>): boolean => !figure.known && figure.applies !== false;

/** What a shot lacks beside what its findings say. */
type Lack = Omit<Readiness, 'state'>;

const NOTHING_LACKS: Lack = { unknown: [], missing: 0, partly: false };

/**
 * @param severities of the shot's findings
 * @param lack null: its text has errors, so it was not worked out
 */
export function readinessOf(severities: ReadonlySet<Severity>, lack: Lack | null): Readiness {
  if (lack === null || severities.has('error'))
    return { ...(lack ?? NOTHING_LACKS), state: 'not-ready' };
  const isWanting = lack.unknown.length > 0 || lack.missing > 0 || lack.partly;
  return { ...lack, state: severities.has('warning') || isWanting ? 'look' : 'ready' };
}

/** The checks to make before each take of the shot; those of the day are made once, for all shots. */
export const ownChecks = ({
  checks,
  checksOfDay,
}: Bench): readonly (readonly [string, 'open' | 'done'])[] =>
  [...checks].filter(([name]) => !checksOfDay.has(name));

export const openOwnChecks = (bench: Bench): readonly string[] =>
  ownChecks(bench).flatMap(([name, state]) => (state === 'open' ? [name] : []));
