/** What to look for in the pictures of a shot's clips. */
import type { LookAsk, MeasuredSides } from '../looked-at/looked.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, valueIn } from './figure.ts';
import { readThrough } from './light-reading.ts';
import { goesBy } from './mirror-light.ts';
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
    measured: measuredSides(bench, lights),
  };
}

function measuredSides(bench: Bench, lights: readonly LightInUse[]): MeasuredSides {
  const hasRows = (field: Field<readonly unknown[]> | undefined): boolean =>
    field !== undefined && (ifKnown(field) ?? []).length > 0;
  const isMetered = (light: LightInUse): boolean =>
    hasRows(light.fields.bench) ||
    (goesBy(light, bench) === 'reading' && readThrough(light) === 'meter');
  const [only] = lights;
  return {
    body: hasRows(bench.body?.fields.bench),
    lamps: lights.length > 0 && lights.every(isMetered),
    sheetLamp:
      lights.length === 1 && only && !isMetered(only) && goesBy(only, bench) === 'illuminance'
        ? sheetLamp(only)
        : null,
  };
}

/** null: dimmed or behind gels, where these may be off as well, or without a distance. */
function sheetLamp({
  name,
  fields,
  dimmedStops,
  gelStops,
}: LightInUse): MeasuredSides['sheetLamp'] {
  const [lux, distanceMm] = [ifKnown(fields.illuminance), ifKnown(fields['illuminance-distance'])];
  const isPlain = [dimmedStops, gelStops].every((stops) => valueIn(stops) === 0);
  return isPlain && lux !== undefined && distanceMm !== undefined
    ? { name, distanceMm, lux }
    : null;
}
