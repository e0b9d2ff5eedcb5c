/** What hovers on a shot's settings look at. */

import type { Say } from '../../../rules/say.ts';
import type { ShotView } from '../../../rules/shot-rule.ts';

export interface SaidShot extends ShotView {
  readonly say: Say;
}
