/** All figures of a shot laid out on the bench. A function of the bench alone. */
import type { Bench } from './bench.ts';
import { clearanceFigures } from './clearance.ts';
import { addLazily, once } from './lazily.ts';
import { lightFigures } from './light.ts';
import { addMirrorFigures } from './mirror.ts';
import { opticalFigures } from './optical.ts';
import { sharpnessFigures } from './sharpness.ts';
import type { ShotFigures } from './shot-figures.ts';
import { timeFigures } from './time.ts';

export function figuresOf(bench: Bench): ShotFigures {
  const optical = opticalFigures(bench);
  const sharpness = sharpnessFigures(bench, optical);
  const time = timeFigures(bench);
  const figures = { ...optical, ...sharpness, ...lightFigures(bench, optical, time), ...time };
  const clearance = once(() => clearanceFigures(bench, optical));
  return addMirrorFigures(
    addLazily(figures, { lightInTheWay: () => clearance().lightInTheWay }),
    bench,
    optical,
    sharpness,
  );
}
