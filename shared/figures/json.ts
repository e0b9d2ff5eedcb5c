/**
 * Figures as JSON, a contract: keys are added, never changed; the unit is in the name; what is
 * not known is null with its reason in `notKnown`; "endless" stands for no limit.
 */
import type { Reasons } from './reasons.ts';

export type JsonFigure = number | 'endless' | readonly number[] | readonly object[] | object | null;

export interface ShotFiguresJson {
  readonly [figure: string]: JsonFigure | Reasons | readonly string[] | undefined;
  /** Figure to reason, for every figure that is null. Nested ones as `depthMm.needed`. */
  readonly notKnown: Reasons;
  /** Figures that were measured instead of calculated; absent if there are none. */
  readonly measured?: readonly string[];
}
