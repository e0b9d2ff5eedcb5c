/**
 * Figures as JSON, a contract: keys are added, never changed; the unit is in the name; what is
 * not known is null with its reason in `notKnown`; "endless" stands for no limit.
 */
import type { Reasons } from './reasons.ts';

export type JsonFigure = number | 'endless' | readonly number[] | readonly object[] | object | null;

/** The least and the greatest value that a number may have. */
export type NumberBounds = readonly [low: number | 'endless', high: number | 'endless'];

/** An input that is not known exactly, and its share of a figure's width, 0 to 1. */
export interface WidenedBy {
  readonly input: string;
  readonly share: number;
  /** At one of its ends the figure has no value: the rig can't frame the field then. */
  readonly mayBeImpossible?: true;
}

export interface BoundsJson {
  /** Of figures that are not known exactly; of a pair of numbers one pair of bounds for each. */
  readonly bounds?: Readonly<Record<string, NumberBounds | readonly NumberBounds[]>>;
  /** What makes them wide, the most first. */
  readonly widenedBy?: Readonly<Record<string, readonly WidenedBy[]>>;
}

export interface ShotFiguresJson extends BoundsJson {
  readonly [figure: string]:
    | JsonFigure
    | Reasons
    | readonly string[]
    | BoundsJson[keyof BoundsJson]
    | undefined;
  /** Figure to reason, for every figure that is null. Nested ones as `depthMm.needed`. */
  readonly notKnown: Reasons;
  /** Figures that were measured instead of calculated; absent if there are none. */
  readonly measured?: readonly string[];
}
