/** Rules in the order in which a search asks them: by what they read and by what asking costs. */
import type { Judged } from './judged.ts';

export interface SplitRules {
  /** About aperture, tilt and light, soon answered. */
  readonly plain: readonly Judged[];
  /** About shutter and ISO, each by itself. */
  readonly timing: readonly Judged[];
  /** About the exposure: all settings together. */
  readonly balance: readonly Judged[];
  /** About aperture, tilt and light, and costly: paths of light are traced. */
  readonly costly: readonly Judged[];
}

const TIMING: ReadonlySet<Judged> = new Set(['shutter-too-slow', 'motion-blur', 'lamp-flicker']);
const COSTLY: ReadonlySet<Judged> = new Set(['source-too-small', 'lens-reflected', 'no-room']);

export function splitRules(rules: readonly Judged[], isAuto: boolean): SplitRules {
  const kindOf = (rule: Judged): keyof SplitRules | null => {
    if (rule === 'exposure-off') return isAuto ? null : 'balance';
    if (rule === 'iso-out-of-range') return isAuto ? 'balance' : 'timing';
    if (TIMING.has(rule)) return 'timing';
    return COSTLY.has(rule) ? 'costly' : 'plain';
  };
  const of = (kind: keyof SplitRules) => rules.filter((rule) => kindOf(rule) === kind);
  return { plain: of('plain'), timing: of('timing'), balance: of('balance'), costly: of('costly') };
}
