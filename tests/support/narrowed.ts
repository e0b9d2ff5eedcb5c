/** Plans in which one input is known better than before. */
import type { UncertainShot } from '../../shared/figures/uncertain.ts';
import { changeTo, type Width } from '../../shared/figures/width.ts';
import { kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { changed, PLAN } from './plans.ts';

/** What each uncertain key of these plans is a quantity of. */
const KIND_OF: Readonly<Record<string, QuantityId>> = {
  'flange-distance': 'length',
  'focal-length': 'length',
  'from-sensor': 'length',
  'front-diameter': 'length',
  'pupil-ratio': 'ratio',
  azimuth: 'angle',
  depth: 'length-or-zero',
  distance: 'length',
  elevation: 'angle',
  factor: 'factor',
  length: 'length',
  lifetime: 'time',
  loss: 'stops',
  luminance: 'luminance',
  magnification: 'magnification',
  mass: 'mass',
  readout: 'time-or-zero',
  'subject-speed': 'speed',
  tilt: 'angle',
};

const pathOf = ({ at }: Width): string | undefined =>
  at?.file === PLAN ? [at.entry, ...at.path].join('/') : undefined;

const valueAt = (width: Width, stand: number): number =>
  (changeTo(width, stand)?.value ?? width.middle) as number;

/** The plan with this input where `stand` says, as if it had been measured; undefined: no key says it. */
export function given(text: string, width: Width, stand: number): string | undefined {
  const [path, kind] = [pathOf(width), KIND_OF[width.key]];
  if (path === undefined || !kind) return undefined;
  return changed(text, { [path]: kindOf(kind).print(valueAt(width, stand) as never) });
}

/** The plan with half the range of this input about the same middle. */
export function halved(text: string, width: Width): string | undefined {
  const [path, kind] = [pathOf(width), KIND_OF[width.key]];
  const rough = kind && kindOf(kind).rough;
  // What is assumed has its middle elsewhere than a range would.
  if (path === undefined || !rough || width.assumed !== null) return undefined;
  const range = { low: valueAt(width, -0.5), high: valueAt(width, 0.5) };
  return changed(text, { [path]: rough.print(range as never) });
}

/** Inputs of a shot that stand in the plan. */
export const inPlan = ({ widths }: UncertainShot): readonly Width[] =>
  widths.filter((width) => pathOf(width) !== undefined && KIND_OF[width.key] !== undefined);
