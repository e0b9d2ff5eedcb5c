/** What hovers on a shot's settings look at. */

import type { ShotView } from '../../../rules/shot-rule.ts';
import type { Say } from '../../../say/say.ts';
import type { Sure } from '../sure.ts';

export interface SaidShot extends ShotView {
  readonly say: Say;
  readonly sure: Sure;
}
