/** Fixes for a wrong exposure by the light itself, in this shot alone: dimmed or moved. */

import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import type { Stops } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { unevenPrice } from './uneven-price.ts';

/** Dimmers and distances can be set to about this accuracy. */
const STEP_STOPS = 0.1;
const STEP_MM = 10;
/** Nearer than this, a light is always in the way, mm. */
const NEAREST_MM = 50;
const FARTHEST_MM = 5000;

export function lightFixes(bench: Bench, errorStops: number): readonly PlanFix[] {
  return [...dimmed(bench, errorStops), ...moved(bench, errorStops)];
}

const placeIn = ({ fields }: Bench, ...keys: readonly string[]) =>
  below(fields.relight.at, ...keys);

const inStops = (value: number): string => KINDS.stops.print(Number(value.toFixed(2)) as Stops);

/**
 * All lights by the same amount, which keeps their balance; brighter only as far as they were
 * dimmed.
 */
function dimmed(bench: Bench, errorStops: number): readonly PlanFix[] {
  const { lights } = bench;
  if (!lights.known || lights.value.length === 0) return [];
  const by = Math.round(errorStops / STEP_STOPS) * STEP_STOPS;
  const edits: PlanEdit[] = [];
  for (const { name, dimmedStops } of lights.value) {
    if (!dimmedStops.known || dimmedStops.value + by < 0) return [];
    const stops = dimmedStops.value + by;
    edits.push({ op: 'set', at: placeIn(bench, name, 'dimmed'), text: inStops(stops) });
  }
  const names = lights.value.map(({ name }) => name).join(message` and `);
  const much = inStops(Math.abs(by));
  const title =
    by > 0
      ? message`Reduce ${names} by ${much} (dimmer, scrim or ND)`
      : message`Raise ${names} by ${much} (dimmer)`;
  return [{ title, edits }];
}

/** A single light on a subject that scatters: the distance at which it gives the needed light. */
function moved(bench: Bench, errorStops: number): readonly PlanFix[] {
  const { lights, fields } = bench;
  const [light] = lights.known && lights.value.length === 1 ? lights.value : [];
  const at = light && ifKnown(light.fields.at);
  const now = at && ifKnown(at.distance);
  if (!light || !at || now === undefined || fields.relight.state === 'invalid') return [];
  const standing = (distanceMm: number): Bench => {
    const distance = { ...at.distance, value: distanceMm } as Known<number> as typeof at.distance;
    const place = { ...light.fields.at, value: { ...at, distance } } as typeof light.fields.at;
    const there = { ...light, fields: { ...light.fields, at: place } };
    return substitute(bench, { lights: { known: true, value: [there], from: [] } });
  };
  const errorAt = (distanceMm: number): number => {
    const { exposureErrorStops: error } = figuresOf(standing(distanceMm));
    return error.known ? error.value : Number.NaN;
  };
  if (Math.abs(errorAt(now * 2) - errorStops) < STEP_STOPS) return [];
  let [near, far] = errorStops < 0 ? [NEAREST_MM, now] : [now, FARTHEST_MM];
  if (!(errorAt(near) > 0 && errorAt(far) < 0)) return [];
  while (far - near > STEP_MM / 4) {
    const middle = (near + far) / 2;
    if (errorAt(middle) > 0) near = middle;
    else far = middle;
  }
  const distanceMm = Math.max(STEP_MM, Math.round(near / STEP_MM) * STEP_MM);
  const text = `${distanceMm} mm`;
  return [
    {
      title:
        distanceMm < now
          ? message`Move ${light.name} in from ${Math.round(now)} mm to ${text}`
          : message`Move ${light.name} back from ${Math.round(now)} mm to ${text}`,
      ...unevenPrice(bench, standing(distanceMm)),
      edits: [{ op: 'set', at: placeIn(bench, light.name, 'at', 'distance'), text }],
    },
  ];
}
