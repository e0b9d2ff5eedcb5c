/** What to look for in the pictures of a shot's clips. */
import type { LookAsk } from '../looked-at/looked.ts';
import { ifKnown } from '../plan/field.ts';
import type { Bench } from './bench.ts';
import { derive, valueIn } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';
import { modulationHz } from './time.ts';

export function lookAskOf(bench: Bench, figures: ShotFigures): LookAsk {
  const lights = bench.lights.known ? bench.lights.value : [];
  const lampsHz = lights
    .map((light) => valueIn(modulationHz(light, bench)))
    .filter((hz): hz is number => hz !== undefined && hz > 0);
  const iso = ifKnown(bench.fields.iso);
  return {
    lampsHz: [...new Set(lampsHz)],
    // Frames that are seconds apart fall anywhere in a lamp's cycle.
    exposedFps: bench.timeLapse ? null : (valueIn(bench.recordRate) ?? null),
    effectiveFNumber: valueIn(figures.effectiveFNumber) ?? null,
    pixelUm:
      valueIn(
        derive(
          [bench.recordedAreaMm, bench.recordedPixels],
          (area, pixels) => (area.width * 1000) / pixels.width,
        ),
      ) ?? null,
    exposureErrorStops: valueIn(figures.exposureErrorStops) ?? null,
    iso: typeof iso === 'number' ? iso : null,
    body: bench.body?.name ?? null,
  };
}
