import type { FileId } from '../plan/place.ts';
import type { Say } from '../say/say.ts';
import type { Analysis } from './analysis.ts';
import type { FormerValues } from './former-values.ts';
import type { Locator } from './locate.ts';
import type { Store } from './store.ts';

/** What a check works with. */
export interface CheckContext {
  readonly store: Store;
  readonly analysis: Analysis;
  readonly locator: Locator;
  readonly say: Say;
  /** Plan files that the host knows of, whether or not they were given. */
  hostFiles(): readonly FileId[];
}

/** What everything that answers an editor's question works with. */
export interface Context extends CheckContext {
  /** What stood where something was taken out. */
  readonly former: FormerValues;
}
