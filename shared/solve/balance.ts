/**
 * The exposure over thousands of settings: what the rules find of it depends on one number alone,
 * the error in stops, or with `auto` the ISO needed, to which shutter and ISO add by their own
 * stops. So the bounds of what they let pass are looked for once.
 */
import { MARKED_ISO } from '../exposure/remedies.ts';
import { known } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { exposureOff } from '../rules/exposure-off.ts';
import { isoOutOfRange } from '../rules/iso-out-of-range.ts';
import type { ShotRule, ShotView } from '../rules/shot-rule.ts';

/** Stops beyond which nothing is a picture any more: no bound is looked for there. */
const FAR_STOPS = 60;
/** Halvings until a bound is exact to a rounding. */
const HALVINGS = 60;

/** What passes lies between these, both included; none does where they are crossed. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

const NOTHING: Span = { from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY };

type Objects = (rule: ShotRule<unknown>, view: ShotView) => boolean;

/** Errors of exposure in stops that pass. */
export function errorSpan(view: ShotView, objects: Objects): Span {
  const passes = (stops: number) =>
    !objects(
      exposureOff,
      saying(view, { exposureErrorStops: known(stops), isoNeeded: known(100) }),
    );
  return spanAround(0, FAR_STOPS, passes);
}

/** What the body may have to choose with `auto`, as log2 of the ISO. */
export function neededIsoSpan(view: ShotView, objects: Objects): Span {
  const passes = (log2Iso: number) =>
    !objects(isoOutOfRange, saying(view, { isoNeeded: known(2 ** log2Iso) }));
  const inside = MARKED_ISO.map(Math.log2).find(passes);
  return inside === undefined ? NOTHING : spanAround(inside, FAR_STOPS, passes);
}

/** The same view but for some of its figures. */
const saying = ({ bench, figures }: ShotView, said: Partial<ShotFigures>): ShotView => ({
  bench,
  // Defined and not set: some figures answer only when they are asked, and can't be set.
  figures: Object.create(
    figures,
    Object.fromEntries(Object.entries(said).map(([name, value]) => [name, { value }])),
  ) as ShotFigures,
});

/** All that passes around a value that does; beyond a bound nothing passes any more. */
function spanAround(inside: number, far: number, passes: (value: number) => boolean): Span {
  if (!passes(inside)) return NOTHING;
  const bound = (side: 1 | -1): number => {
    let good = inside;
    let bad = inside + side * far;
    if (passes(bad)) return side * Number.POSITIVE_INFINITY;
    for (let step = 0; step < HALVINGS; step++) {
      const middle = (good + bad) / 2;
      if (passes(middle)) good = middle;
      else bad = middle;
    }
    return good;
  };
  return { from: bound(-1), to: bound(1) };
}
