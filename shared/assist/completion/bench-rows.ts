/**
 * A row of a light's, body's, converter's or close-up lens's bench that tells more than those it has.
 * What is expected now stands where the number goes, to be written over by what is read.
 */
import { INCIDENT } from '../../assumptions/table.ts';
import { faceOnWeight } from '../../exposure/face-on.ts';
import { fitOf } from '../../figures/fitted-entry.ts';
import { closeUpBench, converterBench } from '../../figures/glass-bench.ts';
import { lightBench } from '../../figures/light-bench.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import type { DefName } from '../../plan/generated/names.ts';
import type { Body, CloseUp, Converter, Light } from '../../plan/generated/types.ts';
import { significant } from '../../say/say.ts';
import type { Where } from './where.ts';

/** null: it is no such row, or nothing can be expected of one. */
export function otherBenchRow({ context, file, place }: Where, of: DefName): string | null {
  const fields = context.analysis.entries.lowered(file, place.entry)?.value;
  if (fields === undefined) return null;
  switch (of) {
    case 'light-bench-row':
      return lightRow(fields as Light);
    case 'body-bench-row':
      return bodyRow(fields as Body);
    case 'converter-bench-row':
      return converterRow(fields as Converter);
    case 'close-up-bench-row':
      return closeUpRow(fields as CloseUp);
    default:
      return null;
  }
}

/** The values under one key of all rows that have it. */
const inRows = <R extends object>(
  bench: Field<readonly Field<R>[]>,
  key: keyof R,
): readonly number[] =>
  (ifKnown(bench) ?? []).flatMap((row) => {
    const field = row.state === 'known' ? (row.value[key] as Field<number>) : undefined;
    return field?.state === 'known' ? [field.value] : [];
  });

/** Twice as far is far enough from any distance to tell a face from a point. */
const FARTHER = 2;
const USUAL_MM = 1000;
/** As exact as a meter shows it. */
const DIGITS = 3;

function lightRow(light: Light): string | null {
  const at = ifKnown(light.at);
  const read = inRows(light.bench, 'distance');
  const distanceMm =
    read.length > 0 ? FARTHER * Math.max(...read) : ((at && ifKnown(at.distance)) ?? USUAL_MM);
  const lux = illuminanceAt(light, distanceMm);
  return lux === undefined
    ? null
    : `{ distance: ${significant(distanceMm)} mm, illuminance: ${significant(Number(lux.toPrecision(DIGITS)))} lx }`;
}

/** lx, facing the light; undefined: nothing says how bright it is. */
function illuminanceAt(light: Light, distanceMm: number): number | undefined {
  const bench = lightBench(light, INCIDENT.middle);
  const fit = bench && fitOf(bench);
  if (fit) {
    const { face, luminance } = bench.at(fit.values);
    return luminance * faceOnWeight(face, distanceMm);
  }
  const lux = ifKnown(light.illuminance);
  const luxAtMm = ifKnown(light['illuminance-distance']);
  if (lux !== undefined && luxAtMm !== undefined) return lux * (luxAtMm / distanceMm) ** 2;
  const luminance = ifKnown(light.luminance);
  const diameterMm = ifKnown(light.diameter);
  const size = ifKnown(light['emitting-size']);
  if (luminance === undefined || (diameterMm === undefined && !size)) return undefined;
  const face =
    diameterMm === undefined
      ? ({ shape: 'rectangle', widthMm: size!.width, heightMm: size!.height } as const)
      : ({ shape: 'round', diameterMm } as const);
  return luminance * faceOnWeight(face, distanceMm);
}

/** At a setting that has no row yet; as the plan calculates, the frame is right. */
function bodyRow({ bench, iso }: Body): string {
  const tried = new Set(inRows(bench, 'set'));
  const limits = ifKnown(iso);
  const [low, high] = [limits && ifKnown(limits.lowest), limits && ifKnown(limits['usable-to'])];
  const settings = [low, high].filter((one): one is NonNullable<typeof one> => one !== undefined);
  const next = settings.find((one) => !tried.has(one)) ?? settings[0] ?? 400;
  return `{ set: ${next}, found: 0 stops over }`;
}

/** Any field does for the factor. */
const FIELD_WITHOUT_MM = 80;

function converterRow(converter: Converter): string | null {
  const bench = converterBench(converter);
  const factor = (bench && fitOf(bench)?.values[0]) ?? ifKnown(converter.factor);
  if (factor === undefined) return null;
  const without = inRows(converter.bench, 'field-without').at(-1) ?? FIELD_WITHOUT_MM;
  return `{ field: ${significant(without / factor)} mm, field-without: ${significant(without)} mm }`;
}

function closeUpRow(closeUp: CloseUp): string | null {
  const bench = closeUpBench(closeUp);
  const powerDpt = (bench && fitOf(bench)?.values[0]) ?? ifKnown(closeUp.power);
  if (powerDpt === undefined) return null;
  const roomMm = 1000 / powerDpt - (ifKnown(closeUp.length) ?? 0);
  return roomMm > 0 ? `{ working-distance: ${significant(roomMm)} mm }` : null;
}
