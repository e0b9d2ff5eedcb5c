/**
 * What can be set for a shot, and what a change of it costs. The least change is the one of the
 * fewest settings; among those, one that exposes the shot right, within a third of a stop, goes
 * before one that only does; then the one that moves them least: aperture, shutter, ISO and a light's
 * distance count in stops of light, the tilt in degrees, and each light added or left out as one.
 */
import type { Bench, LightInUse } from '../figures/bench.ts';
import type { Figure } from '../figures/figure.ts';

export type Setting = 'aperture' | 'shutter' | 'iso' | 'tilt' | 'light';

export const SETTINGS: readonly Setting[] = ['aperture', 'shutter', 'iso', 'tilt', 'light'];

/** One way to set something. */
export interface Choice<V> {
  readonly value: V;
  /** As a plan writes it. */
  readonly text: string;
  /** How far it is from the present one; the present one itself, and no other, is 0. */
  readonly moved: number;
}

/** The lights of the shot, or one of them stood elsewhere. */
export interface LightChoice extends Choice<Figure<readonly LightInUse[]>> {
  readonly names: readonly string[];
  /** The light that is stood elsewhere, and its distance in mm. */
  readonly stood?: { readonly light: string; readonly distanceMm: number };
}

export interface Choices {
  readonly aperture: readonly Choice<number>[];
  /** Seconds. */
  readonly shutter: readonly Choice<number>[];
  readonly iso: readonly Choice<number | 'auto'>[];
  /** Radians. */
  readonly tilt: readonly Choice<number>[];
  readonly light: readonly LightChoice[];
}

/** One choice of each. */
export interface Assignment {
  readonly aperture: Choice<number>;
  readonly shutter: Choice<number>;
  readonly iso: Choice<number | 'auto'>;
  readonly tilt: Choice<number>;
  readonly light: LightChoice;
}

export interface Cost {
  readonly settings: number;
  readonly moved: number;
}

/** Sums of the same steps in another order differ by rounding alone. */
const ROUNDING = 1e-9;

export const costOf = (...choices: readonly Choice<unknown>[]): Cost => ({
  settings: choices.filter(({ moved }) => moved > 0).length,
  moved: choices.reduce((sum, { moved }) => sum + moved, 0),
});

export const sumOf = (a: Cost, b: Cost): Cost => ({
  settings: a.settings + b.settings,
  moved: a.moved + b.moved,
});

/** Negative: `a` is the lesser change. */
export const compareCosts = (a: Cost, b: Cost): number =>
  a.settings - b.settings || (Math.abs(a.moved - b.moved) <= ROUNDING ? 0 : a.moved - b.moved);

/** Whether two changes together are no less than a third. */
export function isAtLeast(one: Cost, other: Cost, third: Cost): boolean {
  const settings = one.settings + other.settings;
  if (settings !== third.settings) return settings > third.settings;
  return one.moved + other.moved >= third.moved - ROUNDING;
}

export const isPresent = ({ moved }: Choice<unknown>): boolean => moved === 0;

export const changedIn = (assignment: Assignment): readonly Setting[] =>
  SETTINGS.filter((setting) => !isPresent(assignment[setting]));

export const presentOf = (choices: Choices): Assignment => ({
  aperture: choices.aperture.find(isPresent)!,
  shutter: choices.shutter.find(isPresent)!,
  iso: choices.iso.find(isPresent)!,
  tilt: choices.tilt.find(isPresent)!,
  light: choices.light.find(isPresent)!,
});

/** Where a setting stands in the plan, or would stand. */
export const placeOf = ({ fields }: Bench, setting: Setting) => fields[setting].at;
