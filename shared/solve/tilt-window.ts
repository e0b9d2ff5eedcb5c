/**
 * The window of tilts at an aperture: the mirror sets the least, the depth the greatest, and the
 * light both, as far as it fills the frame at all; all are figures. A tilt is chosen inside it, and in
 * the dead bands of the rules that guard it only where nothing else does; the present one may stay
 * where no rule objects. A rule that the plan accepts or makes quiet bounds nothing.
 */
import type { ShotFigures } from '../figures/shot-figures.ts';
import { isShutByDepth } from '../rules/lens-reflected.ts';
import { type Assignment, type Choice, isPresent } from './choice.ts';
import type { Judge, Tolerated } from './judge.ts';
import type { Judged } from './judged.ts';

/** Rounding of a tenth of a degree in radians. */
const ROUNDING = 1e-9;
/** More than any dead band is wide: outside of this the rules object for certain. */
const SPARE_RAD = Math.PI / 180;
const SPARE_TIMES = 1.5;

type Span = readonly [least: number, greatest: number];

const ANY: Span = [0, Number.POSITIVE_INFINITY];

/** The rule objects whatever the tilt. */
const NONE: Span = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** By the rule that guards it. Of the lens in the mirror some radians may be tolerated. */
const BOUNDS: Readonly<Record<string, (figures: ShotFigures, tolerated: number) => Span>> = {
  'lens-reflected': ({ leastTiltRad: least, greatestTiltByDepthRad: depth }, tolerated) => {
    if (!least.known) return ANY;
    const from = least.value - tolerated;
    const isShut = depth.known && isShutByDepth(from, depth.value);
    return isShut ? NONE : [from, Number.POSITIVE_INFINITY];
  },
  'depth-short': ({ greatestTiltByDepthRad: greatest }) =>
    greatest.known ? [0, greatest.value] : ANY,
  'source-too-small': ({ litTiltsRad: lit }) =>
    lit.known && lit.value.greatestRad > lit.value.leastRad
      ? [lit.value.leastRad, lit.value.greatestRad]
      : ANY,
};

const BOUNDING: readonly Judged[] = Object.keys(BOUNDS);

type IsInside = (aperture: Choice<number>, tilt: Choice<number>) => boolean;

export class TiltWindow {
  readonly #judge: Judge;
  readonly #present: Assignment;

  constructor(judge: Judge, present: Assignment) {
    this.#judge = judge;
    this.#present = present;
  }

  /** The window that these rules leave; `wide` with what their dead bands may forgive. */
  of(rules: readonly Judged[], wide: boolean, tolerated: Tolerated): IsInside {
    const [times, spare] = wide ? [SPARE_TIMES, SPARE_RAD] : [1, ROUNDING];
    const bounding = BOUNDING.filter(
      (rule) =>
        rules.includes(rule) &&
        this.#judge.isPlain(rule) &&
        (!tolerated.has(rule) || rule === 'lens-reflected'),
    );
    const known = new Map<Choice<number>, ReadonlyMap<Judged, Span>>();
    return (aperture, tilt) => {
      if (isPresent(tilt)) return true;
      const size = Math.abs(tilt.value);
      const spans = known.get(aperture) ?? this.#spansAt(aperture, tolerated);
      known.set(aperture, spans);
      return bounding.every((rule) => {
        const [least, greatest] = spans.get(rule) ?? ANY;
        return size >= least - spare && size <= greatest * times + spare;
      });
    };
  }

  #spansAt(aperture: Choice<number>, tolerated: Tolerated): ReadonlyMap<Judged, Span> {
    const { figures } = this.#judge.view({ ...this.#present, aperture });
    return new Map(
      BOUNDING.map((rule) => [rule, BOUNDS[rule]!(figures, tolerated.get(rule) ?? 0)]),
    );
  }
}
