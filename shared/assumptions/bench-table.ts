/**
 * What is believed of things with a `bench` before their rows are counted, and how far a measurement
 * is right: the rows of the table of assumptions that only a bench makes use of.
 */
import { later } from '../words/message.ts';
import type { Assumption } from './assumption.ts';

const COMMON = later`common practice`;
const LENS = later`a lens with a \`bench\``;
const OVERRIDDEN = later`A range or ± overrides it.`;

export const BENCH_ASSUMPTIONS = {
  'bench-printed': {
    key: null,
    of: LENS,
    quantity: null,
    value: {
      middle: later`as its data sheet says`,
      ends: later`± 1% of focal length and closest distance, ± 3% of closest magnification, ± 5% of the pupil ratio`,
    },
    source: COMMON,
    note: OVERRIDDEN,
  },
  'bench-principal-planes': {
    key: null,
    of: later`the gap between the principal planes of a lens with a \`bench\``,
    quantity: null,
    value: {
      middle: later`10% of the focal length`,
      ends: later`−40% to 60%; at closest focus up to 10% more or less`,
    },
    source: later`W. J. Smith, Modern Lens Design, and M. Laikin, Lens Design: designs traced for it`,
    note: later`Without a bench a lens is taken as thin.`,
  },
  'bench-pupil-ratio': {
    key: 'pupil-ratio',
    of: LENS,
    quantity: null,
    value: {
      middle: later`the middle of the ends`,
      ends: later`as without a bench; 0.8 to 1.8 for a lens no longer than the sensor's diagonal`,
    },
    source: COMMON,
    note: later`Short lenses are mostly built as reversed telephotos.`,
  },
  'bench-iris': {
    key: null,
    of: later`the iris at close focus of a lens with a \`bench\``,
    quantity: null,
    value: {
      middle: later`halfway between both laws`,
      ends: later`from keeping the f-number to keeping its size`,
    },
    source: COMMON,
    note: later`An effective f-number at closest focus settles it.`,
  },
  'bench-bend': {
    key: null,
    of: later`the course of a lens with a \`bench\` between the ends of its ring`,
    quantity: null,
    value: {
      middle: later`straight, by the magnification of the ring`,
      ends: later`halfway it has gone 25% to 75% of the way`,
    },
    source: later`a parabola that bends more turns back on the way`,
    note: later`Only lenses that breathe have a course. A row with the ring at a distance settles it.`,
  },
  'bench-ruler': {
    key: null,
    of: later`a ruler and a light comparison in \`bench\``,
    quantity: null,
    value: {
      middle: later`as measured`,
      ends: later`field ± 0.5% or 0.3 mm, whichever is more; distance ± 2 mm; light ± 0.1 stops`,
    },
    source: COMMON,
    note: OVERRIDDEN,
  },
  'bench-light-output': {
    key: null,
    of: later`the output of a light with a \`bench\``,
    quantity: null,
    value: {
      middle: later`its \`luminance\`, or its \`illuminance\` with \`illuminance-distance\``,
      ends: later`± 0.3 stops`,
    },
    source: COMMON,
    note: later`Without either, only the rows count. A range overrides it.`,
  },
  'bench-light-face': {
    key: 'emitting-size',
    of: later`a light with a \`bench\``,
    quantity: null,
    value: {
      middle: later`as given; otherwise round, 10% of the nearest distance in \`bench\``,
      ends: later`± 2%; otherwise 1% to 100%`,
    },
    source: COMMON,
    note: later`Without a size it takes rows at two distances.`,
  },
  'bench-meter': {
    key: null,
    of: later`a light meter in \`bench\``,
    quantity: null,
    value: {
      middle: later`as measured`,
      ends: later`± 0.1 stops; distance ± 5 mm or 1%, whichever is more`,
    },
    source: COMMON,
    note: later`± overrides it. Where some rows are lux and some exposures, the constant C of the meter is left open too.`,
  },
  'bench-iso': {
    key: null,
    of: later`the ISO offset of a body with a \`bench\``,
    quantity: null,
    value: { middle: later`none`, ends: later`± 1 stop; a test frame is read to ± 0.2 stops` },
    source: COMMON,
    note: later`Without a bench a body is taken by its ISO setting. Readings through the body have its offset in them.`,
  },
  'bench-glass': {
    key: null,
    of: later`a converter or close-up lens with a \`bench\``,
    quantity: null,
    value: {
      middle: later`as printed`,
      ends: later`factor ± 3%, power ± 10%, light loss ± 0.05 stops`,
    },
    source: COMMON,
    note: later`A light loss that is not given starts from its usual ends.`,
  },
} as const satisfies Readonly<Record<string, Assumption>>;
