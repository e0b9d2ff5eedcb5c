import type { FileId } from '../plan/place.ts';
import type { Say } from '../say/say.ts';
import type { Analysis } from './analysis.ts';
import type { FormerValues } from './former-values.ts';
import type { Locator } from './locate.ts';
import type { Store } from './store.ts';
import type { Trials } from './trials.ts';

/** The parts that a check needs. */
export interface CheckContext {
  readonly store: Store;
  readonly analysis: Analysis;
  readonly locator: Locator;
  readonly say: Say;
  readonly trials: Trials;
  /** Plan files that the host knows, whether or not their texts were given. */
  hostFiles(): readonly FileId[];
}

/** The parts that every answer to an editor needs. */
export interface Context extends CheckContext {
  /** Previous values of deleted text. */
  readonly former: FormerValues;
}
