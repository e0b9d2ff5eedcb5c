/** How the picture is made: as it was measured on the bench, else as the rig is traced. */
import type { Bench } from './bench.ts';
import { derive, type Figure, withValue } from './figure.ts';
import { withMeasured } from './measured.ts';
import type { OpticalFigures } from './shot-figures.ts';
import { tracedOptics, untraced } from './traced.ts';

export const opticalFigures = (bench: Bench): OpticalFigures =>
  withMeasured(bench) ?? tracedOptics(bench);

/** u, subject to entrance pupil, mm: from a measured working distance on where there is one. */
export const pupilDistanceMm = (
  bench: Bench,
  { trace, workingDistanceMm }: OpticalFigures,
): Figure<number> => {
  if (!trace.known) return trace;
  const { pupilDistanceMm: traced, pupilDepthMm: depth } = trace.value;
  if (workingDistanceMm.known && workingDistanceMm.measured && depth !== undefined)
    return derive([workingDistanceMm, trace], (room) => room + depth);
  return traced === undefined
    ? untraced(trace.value, 'pupilDistanceMm', bench.parts)
    : withValue(trace, traced);
};
