/** What a shot's figures wait for. */
import type { Figure, Need } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';

/** The figures that findings rest on: what they lack is worth asking for. */
const asked = (figures: ShotFigures): readonly Figure<unknown>[] => [
  figures.workingDistanceMm,
  figures.fieldMm,
  figures.depthMm.total,
  figures.depthMm.needed,
  figures.contrast,
  figures.exposureErrorStops,
  figures.shutterAngleDeg,
  figures.flickerResidual,
  figures.pullTravelMm,
];

export function needsOf(figures: ShotFigures): readonly Need[] {
  const needs = new Map<string, Need>();
  for (const figure of asked(figures))
    if (!figure.known && !figure.silent)
      for (const need of figure.needs) {
        const { file, entry, path } = need.at;
        needs.set(`${file} ${entry} ${path.join('.')}`, need);
      }
  return [...needs.values()];
}
