/**
 * Fixes for a reflection that burns out: a larger or nearer light, a diffuser between, crossed sheets,
 * a flat subject turned away, less exposure.
 */
import { MARKED_ISO } from '../exposure/remedies.ts';
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { diffusedStops } from '../figures/diffuser.ts';
import { derive, known } from '../figures/figure.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import type { Stops } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { saidInFrame } from '../say/in-frame.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { HIDDEN } from './clear-direction.ts';
import { unevenPrice } from './uneven-price.ts';

/** Diffusers and softboxes are made about as large as this, mm. */
const LARGEST_MM = 1500;
/** Factors by which a face is tried larger, and a light nearer. */
const LARGER = [1.5, 2, 2.5, 3, 4, 6];
const NEARER = [0.8, 0.7, 0.6, 0.5, 0.4, 0.3];
/** Parts of the way at which a diffuser is tried, from the subject. */
const BETWEEN = [0.5, 0.4, 0.3];
/** A diffuser wider than this many times its distance from the light is brighter in its middle. */
const WIDEST = 1.5;
/** A subject that leans more shows little of itself. */
const MOST_TURN_DEG = 45;
const STEP_MM = 10;
/** Less than this nobody dims. */
const STEP_STOPS = 0.1;

export function highlightFixes(bench: Bench, light: string, over: number): readonly PlanFix[] {
  const inUse = bench.lights.known && bench.lights.value.find(({ name }) => name === light);
  if (!inUse || bench.fields.relight.state === 'invalid') return [];
  return [
    ...larger(bench, inUse),
    ...nearer(bench, inUse),
    ...between(bench, inUse),
    ...crossed(bench, inUse),
    ...turned(bench, light),
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

/** One light of the bench with other fields; a new size is that of a diffuser. */
function withLight(bench: Bench, light: LightInUse, fields: Partial<LightInUse['fields']>): Bench {
  if (!bench.lights.known) return bench;
  const size = fields['emitting-size'];
  const isNew = size !== undefined && !light.isDiffused && !light.isRebrightened;
  const there: LightInUse = {
    ...light,
    fields: { ...light.fields, ...fields },
    ...(isNew && {
      isDiffused: true,
      gelStops: derive(
        [light.gelStops, diffusedStops(light.fields, size, bench.constants)],
        (before, diffuser) => before + diffuser,
      ),
    }),
  };
  const value = bench.lights.value.map((each) => (each === light ? there : each));
  return substitute(bench, { lights: { ...bench.lights, value } });
}

/**
 * Edits below `relight` of the light, and its dimmer where the exposure would change. One edit where
 * the shot doesn't change the light yet: two would each write the key anew.
 */
function relit(
  bench: Bench,
  light: LightInUse,
  changes: readonly (readonly [keys: readonly string[], text: string])[],
  dimmedBy: number,
): readonly PlanEdit[] {
  const { relight } = bench.fields;
  const dimmed = (light.dimmedStops.known ? light.dimmedStops.value : 0) + dimmedBy;
  const stops = KINDS.stops.print(Number(dimmed.toFixed(2)) as Stops);
  const all = [...changes, ...(dimmedBy === 0 ? [] : [[['dimmed'], stops] as const])];
  const written = `{ ${all.map(([keys, text]) => inFlow(keys, text)).join(', ')} }`;
  if (relight.state !== 'known')
    return [{ op: 'set', at: relight.at, text: `{ ${light.name}: ${written} }` }];
  const own = below(relight.at, light.name);
  if (!relight.value.has(light.name)) return [{ op: 'set', at: own, text: written }];
  return all.map(([keys, text]) => ({ op: 'set', at: below(own, ...keys), text }));
}

/** `at: { distance: 240 mm }` */
const inFlow = ([first, ...rest]: readonly string[], text: string): string =>
  `${first}: ${rest.length === 0 ? text : `{ ${inFlow(rest, text)} }`}`;

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
    // No dimmer makes up for the light that the diffuser takes.
    const dimmedBy = Math.max(0, dimming(bench, there));
    if (!serves(there, dimmedBy)) continue;
    const text = `${width} x ${height} mm`;
    return [
      {
        title: message`Put a ${width} × ${height} mm diffuser in front of ${light.name}`,
        sideEffects: message`read the light again`,
        edits: relit(bench, light, [[['emitting-size'], text]], dimmedBy),
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
        edits: relit(bench, light, [[['at', 'distance'], `${distanceMm} mm`]], dimmedBy),
      },
    ];
  }
  return [];
}

/**
 * A diffuser on the way from the light: lit from behind, it is the face that the subject sees. It is the
 * smallest that serves half way, or as near as it takes.
 */
function between(bench: Bench, light: LightInUse): readonly PlanFix[] {
  const { 'emitting-size': face, at: where } = light.fields;
  const [size, at] = [ifKnown(face), ifKnown(where)];
  const now = at && ifKnown(at.distance);
  if (!size || !at || now === undefined) return [];
  for (const part of BETWEEN) {
    const distanceMm = rounded(now * part);
    if (distanceMm <= 0) break;
    const distance = { ...at.distance, value: distanceMm } as Known<number> as typeof at.distance;
    for (const factor of [1, ...LARGER]) {
      const [width, height] = [rounded(size.width * factor), rounded(size.height * factor)];
      if (Math.max(width, height) > Math.min(LARGEST_MM, WIDEST * (now - distanceMm))) break;
      const value = { ...size, width, height } as typeof size;
      const there = withLight(bench, light, {
        'emitting-size': { ...face, value } as typeof face,
        at: { ...where, value: { ...at, distance } } as typeof where,
      });
      const dimmedBy = dimming(bench, there);
      if (dimmedBy < 0 || !serves(there, dimmedBy)) continue;
      const { sideEffects } = unevenPrice(bench, there);
      const loss = message`it takes light; read the light again`;
      return [
        {
          title: message`Stand a ${width} × ${height} mm diffuser ${distanceMm} mm from the subject, before ${light.name}`,
          sideEffects: sideEffects === undefined ? loss : `${loss}; ${sideEffects}`,
          edits: relit(
            bench,
            light,
            [
              [['emitting-size'], `${width} x ${height} mm`],
              [['at', 'distance'], `${distanceMm} mm`],
            ],
            dimmedBy,
          ),
        },
      ];
    }
  }
  return [];
}

/**
 * The tilt nearest to the present one at which a flat face reflects past the frame, and a degree more,
 * since nobody sets it any closer.
 */
function turned(bench: Bench, light: string): readonly PlanFix[] {
  const { tiltRad, fields } = bench;
  const { highlightPlace } = figuresOf(bench);
  if (!highlightPlace.known || !highlightPlace.value.isFlat || !tiltRad.known) return [];
  if (fields.tilt.state === 'invalid') return [];
  const now = Math.round((tiltRad.value * 180) / Math.PI);
  const at = (degrees: number): Bench =>
    substitute(bench, { tiltRad: known((degrees * Math.PI) / 180) });
  for (let step = 1; step <= MOST_TURN_DEG; step += 1)
    for (const side of [1, -1]) {
      const degrees = now + side * (step + 1);
      if (Math.abs(degrees) > MOST_TURN_DEG) continue;
      if (!reflectsPast(at(now + side * step)) || !reflectsPast(at(degrees))) continue;
      const place = figuresOf(at(degrees)).highlightPlace;
      const where = place.known ? saidInFrame(place.value) : '';
      return [
        {
          title: message`Tilt the subject ${degrees}°, so that ${light} reflects ${where}`,
          ...unevenPrice(bench, at(degrees)),
          edits: [{ op: 'set', at: fields.tilt.at, text: `${degrees} deg` }],
        },
      ];
    }
  return [];
}

function reflectsPast(bench: Bench): boolean {
  const { highlightPlace } = figuresOf(bench);
  return highlightPlace.known && highlightPlace.value.share === 0;
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
      edits: relit(bench, light, [[['polarised'], 'crossed']], 0),
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
