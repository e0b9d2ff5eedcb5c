import { MARKED_ISO, nearestMark } from '../exposure/remedies.ts';
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Stops over the frame from which on an even subject looks brighter at one edge. Common practice. */
const SEEN_STOPS = 0.5;
const SPOILT_STOPS = 1;
/** Accuracy of what is known of a lamp's place. */
const DEAD_BAND = 0.05;

interface Facts {
  readonly light: string | null;
  /** Infinity: part of the frame gets none. */
  readonly stops: number;
}

export const unevenLight: ShotRule<Facts> = {
  name: 'uneven-light',
  severity: 'warning',
  docs: {
    when: 'the light on a subject that scatters it varies over the frame. A note above 1/2 stop, a warning above 1 stop.',
    why: 'Half a stop from edge to edge is seen on an even surface, and one stop spoils it (common practice). A near or slanting lamp falls off across the frame. Only the part of the frame that the subject fills counts. The faces of the lights are summed at each place (Lambert).',
    remedy:
      'Move the light back and give it more power or a higher ISO. Or light from both sides, or frame closer.',
    bad: [
      {
        says: 'a lamp close to a wide frame',
        change: {
          'lights/panel/emitting-size': '80 x 60 mm',
          'shots/frost/relight': '{ panel: { at: { distance: 140 mm }, dimmed: 3 stops } }',
        },
      },
    ],
    good: [
      {
        says: 'the same farther away',
        change: {
          'lights/panel/emitting-size': '80 x 60 mm',
          'shots/frost/relight': '{ panel: { at: { distance: 600 mm } } }',
          'shots/frost/iso': 'auto',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { unevennessStops } = figures;
    if (!unevennessStops.known || unevennessStops.value <= SEEN_STOPS + DEAD_BAND) return [];
    const { lights, fields } = bench;
    const [light] = lights.known && lights.value.length === 1 ? lights.value : [];
    const at = light?.at ?? fields.light.at;
    return [
      {
        at,
        severity: unevennessStops.value > SPOILT_STOPS + DEAD_BAND ? 'warning' : 'note',
        facts: { light: light?.name ?? null, stops: unevennessStops.value },
        related: () => relatedTo(at, unevennessStops),
      },
    ];
  },
  words: ({ light, stops }, say) => ({
    what: !Number.isFinite(stops)
      ? message`Part of the frame gets no light.`
      : light === null
        ? message`The light varies by ${say.stops(stops)} across the frame.`
        : message`The light of ${light} varies by ${say.stops(stops)} across the frame.`,
    why: message`Edges included, from the brightest place to the darkest; ${say.stops(SEEN_STOPS)} shows on an even surface.`,
  }),
  size: ({ stops }) => ({ kind: 'stops', value: stops }),
  numbers: ({ stops }): Readonly<Record<string, number>> =>
    Number.isFinite(stops) ? { unevennessStops: stops } : {},
  fixes({ facts: { light } }, { bench }) {
    const inUse = bench.lights.known
      ? bench.lights.value.find(({ name }) => name === light)
      : undefined;
    return inUse ? farther(bench, inUse) : [];
  },
};

/** Factors by which the light is tried farther away. */
const FARTHER = [1.25, 1.5, 2, 2.5, 3, 4];
const STEP_MM = 10;
const FARTHEST_MM = 5000;

/** The nearest distance at which the light is even, with the ISO that makes up for the light lost. */
function farther(bench: Bench, light: LightInUse): readonly PlanFix[] {
  const at = ifKnown(light.fields.at);
  const now = at && ifKnown(at.distance);
  if (!at || now === undefined || bench.fields.relight.state === 'invalid') return [];
  for (const factor of FARTHER) {
    const mm = Math.round((now * factor) / STEP_MM) * STEP_MM;
    if (mm > FARTHEST_MM) return [];
    const distance = { ...at.distance, value: mm } as Known<number> as typeof at.distance;
    const place = { ...light.fields.at, value: { ...at, distance } } as typeof light.fields.at;
    const there = substitute(bench, {
      lights: {
        known: true,
        value: [{ ...light, fields: { ...light.fields, at: place } }],
        from: [],
      },
    });
    const { unevennessStops: uneven, isoNeeded } = figuresOf(there);
    if (!uneven.known || uneven.value > SEEN_STOPS) continue;
    const moved: PlanEdit = {
      op: 'set',
      at: below(bench.fields.relight.at, light.name, 'at', 'distance'),
      text: `${mm} mm`,
    };
    const iso =
      bench.iso.known && bench.iso.value !== 'auto' && isoNeeded.known
        ? nearestMark(MARKED_ISO, isoNeeded.value)
        : undefined;
    if (iso === undefined)
      return [{ title: message`Move ${light.name} back to ${mm} mm`, edits: [moved] }];
    return [
      {
        title: message`Move ${light.name} back to ${mm} mm and set ISO ${iso}`,
        edits: [moved, { op: 'set', at: bench.fields.iso.at, text: String(iso) }],
      },
    ];
  }
  return [];
}
