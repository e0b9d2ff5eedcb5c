/** Which of the plan's lights a shot could have, and where the one it has could stand. */
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { type Figure, known } from '../figures/figure.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import type { LightChoice } from './choice.ts';

/** The shot's lights if it named these. */
export type Relit = (names: readonly string[]) => Figure<readonly LightInUse[]>;

/** Distances are tried from half to twice the present one, in third stops. */
const MOST_THIRDS = 6;
/** A stand is put down to about this, mm. */
const STEP_MM = 10;
/** Nearer than this a light is in the way of everything, mm. */
const NEAREST_MM = 50;
/** Lights of a plan beyond these are not tried: a shelf's worth of them is a choice, no setting. */
const MOST_LIGHTS = 12;

export function lightChoices(bench: Bench, relit: Relit): readonly LightChoice[] {
  const { lights, offer } = bench;
  const names = lights.known ? lights.value.map(({ name }) => name) : [];
  const present: LightChoice = { value: lights, names, text: listed(names), moved: 0 };
  if (!lights.known || names.length === 0) return [present];
  const others = offer.names('lights').slice(0, MOST_LIGHTS);
  const sets = setsNear(names, others).map(
    (set): LightChoice => ({
      value: relit(set),
      names: set,
      text: listed(set),
      moved: apart(set, names),
    }),
  );
  return [present, ...elsewhere(bench, lights.value, names), ...sets];
}

const listed = (names: readonly string[]): string => `[${names.join(', ')}]`;

/** One more, one less, or another alone. */
function setsNear(
  names: readonly string[],
  all: readonly string[],
): readonly (readonly string[])[] {
  const unused = all.filter((name) => !names.includes(name));
  return [
    ...unused.map((name) => [...names, name]),
    ...(names.length > 1 ? names.map((left) => names.filter((name) => name !== left)) : []),
    ...unused.map((name) => [name]),
  ];
}

const apart = (set: readonly string[], names: readonly string[]): number =>
  set.filter((name) => !names.includes(name)).length +
  names.filter((name) => !set.includes(name)).length;

function elsewhere(
  { fields }: Bench,
  lights: readonly LightInUse[],
  names: readonly string[],
): readonly LightChoice[] {
  if (fields.relight.state === 'invalid') return [];
  return lights.flatMap((light) => {
    const at = ifKnown(light.fields.at);
    const now = at && ifKnown(at.distance);
    if (!at || now === undefined) return [];
    const tried = new Set<number>([now]);
    return thirds().flatMap((third): readonly LightChoice[] => {
      const distanceMm = Math.round((now * 2 ** (third / 6)) / STEP_MM) * STEP_MM;
      if (distanceMm < NEAREST_MM || tried.has(distanceMm)) return [];
      tried.add(distanceMm);
      const moved = lights.map((one) => (one === light ? stoodAt(light, distanceMm) : one));
      return [
        {
          value: known(moved),
          names,
          text: `${distanceMm} mm`,
          moved: 2 * Math.abs(Math.log2(distanceMm / now)),
          stood: { light: light.name, distanceMm },
        },
      ];
    });
  });
}

const thirds = (): readonly number[] =>
  Array.from({ length: 2 * MOST_THIRDS + 1 }, (_, index) => index - MOST_THIRDS);

/** The light at another distance; where it stood when it was read stays. */
function stoodAt(light: LightInUse, distanceMm: number): LightInUse {
  const { at } = light.fields;
  if (at.state !== 'known') return light;
  const distance = { ...at.value.distance, value: distanceMm } as Known<number>;
  const place = { ...at, value: { ...at.value, distance: distance as typeof at.value.distance } };
  return { ...light, fields: { ...light.fields, at: place } };
}

/** The bench with all its lights brighter by so many stops: what a stronger lamp would do. */
export const brighter = (bench: Bench, stops: number): Bench =>
  bench.lights.known
    ? substitute(bench, {
        lights: known(
          bench.lights.value.map((light) => ({
            ...light,
            dimmedStops: light.dimmedStops.known
              ? known(light.dimmedStops.value - stops)
              : light.dimmedStops,
          })),
        ),
      })
    : bench;
