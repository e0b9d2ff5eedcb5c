/**
 * Where a value goes: which of a shot's results it changes. The tests change each of these values
 * in a plan and see exactly these results move.
 */
import type { DefName } from '../../plan/generated/shapes.ts';

/** A result in words, and the figures that show it. */
export const RESULTS = {
  size: { words: 'magnification and field', figures: ['magnification', 'fieldMm'] },
  reach: { words: 'reach', figures: ['reach'] },
  distance: { words: 'working distance', figures: ['workingDistanceMm'] },
  effective: { words: 'effective f-number', figures: ['effectiveFNumber'] },
  depth: { words: 'depth of field', figures: ['judgedDepthMm'] },
  needed: { words: 'depth needed', figures: ['depthMm.needed'] },
  contrast: { words: 'contrast left by diffraction', figures: ['contrast'] },
  exposure: { words: 'exposure', figures: ['exposureErrorStops', 'isoNeeded'] },
  angle: { words: 'shutter angle', figures: ['shutterAngleDeg'] },
  flicker: { words: 'flicker', figures: ['flickerResidual'] },
} as const;

export type Result = keyof typeof RESULTS;

const ALL_BUT_REACH: readonly Result[] = [
  'size',
  'distance',
  'effective',
  'depth',
  'needed',
  'contrast',
  'exposure',
];
const ALL_OF_THE_CHAIN: readonly Result[] = ['reach', ...ALL_BUT_REACH];

export const GOES_INTO: Partial<Record<DefName, Readonly<Record<string, readonly Result[]>>>> = {
  plan: {
    mains: ['flicker'],
    'circle-of-confusion': ['depth'],
  },
  deliver: {
    size: ['depth', 'contrast'],
  },
  body: {
    flange: ['reach', 'distance', 'effective', 'depth', 'contrast', 'exposure'],
  },
  recording: {
    size: ['contrast'],
    rate: ['exposure', 'angle', 'flicker'],
    area: ALL_BUT_REACH,
  },
  lens: {
    focal: ALL_OF_THE_CHAIN,
    loss: ['exposure'],
    length: ['reach', 'distance', 'effective', 'depth', 'contrast', 'exposure'],
    grows: ['reach', 'distance', 'effective', 'depth', 'contrast', 'exposure'],
    'pupil-ratio': ['effective', 'depth', 'contrast', 'exposure'],
  },
  closest: {
    'from-sensor': ALL_OF_THE_CHAIN,
    magnification: ALL_OF_THE_CHAIN,
  },
  tube: {
    length: ALL_OF_THE_CHAIN,
  },
  converter: {
    factor: ALL_OF_THE_CHAIN,
    length: ALL_OF_THE_CHAIN,
    loss: ['exposure'],
  },
  'close-up': {
    power: ['reach', 'distance', 'effective', 'depth', 'contrast', 'exposure'],
    loss: ['exposure'],
  },
  filter: {
    loss: ['exposure'],
  },
  light: {
    kind: ['flicker'],
    supply: ['flicker'],
    illuminance: ['exposure'],
    modulation: ['flicker'],
    'modulation-depth': ['flicker'],
  },
  reading: {
    aperture: ['exposure'],
    shutter: ['exposure'],
    iso: ['exposure'],
    through: ['exposure'],
    magnification: ['exposure'],
  },
  subject: {
    kind: ['needed'],
    size: ['needed'],
    diameter: ['needed'],
    depth: ['needed'],
    bow: ['needed'],
  },
  shot: {
    field: ALL_BUT_REACH,
    magnification: ALL_BUT_REACH,
    ring: ALL_BUT_REACH,
    tilt: ['needed'],
    'tilt-about': ['needed'],
    aperture: ['effective', 'depth', 'contrast', 'exposure'],
    shutter: ['exposure', 'angle', 'flicker'],
    iso: ['exposure'],
    filters: ['exposure'],
  },
  relight: {
    dimmed: ['exposure'],
  },
  move: {
    kind: ['needed'],
    speed: ['needed'],
    along: ['needed'],
    rail: ['needed'],
    duration: ['needed'],
  },
  take: {
    duration: ['needed'],
  },
};

/** "Goes into reach, working distance and depth of field."; empty where nothing follows from it. */
export function goesInto(of: DefName, key: string): string {
  const words = (GOES_INTO[of]?.[key] ?? []).map((result) => RESULTS[result].words);
  if (words.length === 0) return '';
  const last = words.at(-1);
  return `Goes into ${words.length > 1 ? `${words.slice(0, -1).join(', ')} and ` : ''}${last}.`;
}
