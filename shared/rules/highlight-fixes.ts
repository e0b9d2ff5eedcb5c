/** Fixes for a reflection that burns out: a larger or nearer light, crossed sheets, less exposure. */
import { MARKED_ISO } from '../exposure/remedies.ts';
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below, type Place } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import type { Stops } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { HIDDEN } from './clear-direction.ts';
import { unevenPrice } from './uneven-price.ts';

/** Diffusers and softboxes are made about as large as this, mm. */
const LARGEST_MM = 1500;
/** Factors by which a face is tried larger, and a light nearer. */
const LARGER = [1.5, 2, 2.5, 3, 4, 6];
const NEARER = [0.8, 0.7, 0.6, 0.5, 0.4, 0.3];
const STEP_MM = 10;
/** Less than this nobody dims. */
const STEP_STOPS = 0.1;

export function highlightFixes(bench: Bench, light: string, over: number): readonly PlanFix[] {
  const inUse = bench.lights.known && bench.lights.value.find(({ name }) => name === light);
  if (!inUse || bench.fields.relight.state === 'invalid') return [];
  return [
    ...larger(bench, inUse),
    ...nearer(bench, inUse),
    ...crossed(bench, inUse),
    ...darker(bench, over),
  ];
}

const rounded = (mm: number): number => Math.round(mm / STEP_MM) * STEP_MM;

/** By how much the light has to be dimmed for the exposure that the shot has now, stops. */
function dimming(bench: Bench, there: Bench): number {
  const [now, then] = [bench, there].map((one) => figuresOf(one).exposureErrorStops);
  const brighter = now?.known && then?.known ? then.value - now.value : 0;
  return Math.abs(brighter) < STEP_STOPS / 2 ? 0 : Math.round(brighter / STEP_STOPS) * STEP_STOPS;
}

/** Whether the light is clear of lens and view, and none of its images burns out any more. */
function serves(there: Bench, dimmedBy: number): boolean {
  const { highlight, highlightLatitudeStops: most, lightInTheWay: way } = figuresOf(there);
  if (way.known && (way.value.clearanceMm <= 0 || way.value.hiddenShare > HIDDEN)) return false;
  return highlight.known && most.known && highlight.value.stops - dimmedBy <= most.value;
}

/** One light of the bench with other fields. */
function withLight(bench: Bench, light: LightInUse, fields: Partial<LightInUse['fields']>): Bench {
  if (!bench.lights.known) return bench;
  const there = { ...light, fields: { ...light.fields, ...fields } };
  const value = bench.lights.value.map((each) => (each === light ? there : each));
  return substitute(bench, { lights: { ...bench.lights, value } });
}

/** Edits below `relight` of the light, and its dimmer where the exposure would change. */
function relit(
  bench: Bench,
  light: LightInUse,
  edit: readonly [keys: readonly string[], text: string],
  dimmedBy: number,
): readonly PlanEdit[] {
  const place = (...keys: readonly string[]): Place =>
    below(bench.fields.relight.at, light.name, ...keys);
  const dimmed = (light.dimmedStops.known ? light.dimmedStops.value : 0) + dimmedBy;
  const stops = KINDS.stops.print(Number(dimmed.toFixed(2)) as Stops);
  return [
    { op: 'set', at: place(...edit[0]), text: edit[1] },
    ...(dimmedBy === 0 ? [] : [{ op: 'set' as const, at: place('dimmed'), text: stops }]),
  ];
}

function larger(bench: Bench, light: LightInUse): readonly PlanFix[] {
  const field = light.fields['emitting-size'];
  const size = ifKnown(field);
  if (!size) return [];
  for (const factor of LARGER) {
    const [width, height] = [rounded(size.width * factor), rounded(size.height * factor)];
    if (Math.max(width, height) > LARGEST_MM) break;
    const value = { ...size, width, height } as typeof size;
    const there = withLight(bench, light, {
      'emitting-size': { ...field, value } as typeof field,
    });
    const dimmedBy = dimming(bench, there);
    if (!serves(there, dimmedBy)) continue;
    const text = `${width} x ${height} mm`;
    return [
      {
        title: message`Put a ${width} × ${height} mm diffuser in front of ${light.name}`,
        sideEffects: message`read the light again`,
        edits: relit(bench, light, [['emitting-size'], text], dimmedBy),
      },
    ];
  }
  return [];
}

function nearer(bench: Bench, light: LightInUse): readonly PlanFix[] {
  const field = light.fields.at;
  const at = ifKnown(field);
  const now = at && ifKnown(at.distance);
  if (!at || now === undefined) return [];
  for (const factor of NEARER) {
    const distanceMm = rounded(now * factor);
    if (distanceMm <= 0) break;
    const distance = { ...at.distance, value: distanceMm } as Known<number> as typeof at.distance;
    const there = withLight(bench, light, {
      at: { ...field, value: { ...at, distance } } as typeof field,
    });
    const dimmedBy = dimming(bench, there);
    if (dimmedBy < 0 || !serves(there, dimmedBy)) continue;
    return [
      {
        title:
          dimmedBy > 0
            ? message`Move ${light.name} in to ${distanceMm} mm and dim it by ${new Say().stops(dimmedBy)}`
            : message`Move ${light.name} in to ${distanceMm} mm`,
        ...unevenPrice(bench, there),
        edits: relit(bench, light, [['at', 'distance'], `${distanceMm} mm`], dimmedBy),
      },
    ];
  }
  return [];
}

/** A polariser of the shot has nothing to cross while the light has no sheet. */
function crossed(bench: Bench, light: LightInUse): readonly PlanFix[] {
  const { filters } = bench;
  const polariser =
    filters.known && filters.value.find(({ fields }) => ifKnown(fields.kind) === 'polariser');
  if (!polariser || ifKnown(light.fields.polarised) === 'crossed') return [];
  return [
    {
      title: message`Put a polarising sheet on ${light.name}, crossed with ${polariser.name}`,
      sideEffects: message`the sheet takes light; read it again`,
      edits: relit(bench, light, [['polarised'], 'crossed'], 0),
    },
  ];
}

/** The highest ISO at which nothing burns out. */
function darker({ iso, isoLimits, fields }: Bench, over: number): readonly PlanFix[] {
  if (!iso.known || iso.value === 'auto') return [];
  const lowest = isoLimits.lowest.known ? isoLimits.lowest.value : 0;
  const wanted = iso.value * 2 ** -over;
  const mark = MARKED_ISO.findLast((each) => each <= wanted * 1.02 && each >= lowest);
  if (mark === undefined) return [];
  return [setTo(message`Set ISO ${mark}`, fields.iso.at, String(mark))];
}
