/**
 * Where a value goes: which of a shot's results it changes. The tests change each of these values
 * in a plan and see exactly these results move.
 */
import type { DefName } from '../../plan/generated/names.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, later, message } from '../../words/message.ts';

/** A result in words, and the figures that show it. */
export const RESULTS = {
  size: { words: later`magnification and field`, figures: ['magnification', 'fieldMm'] },
  reach: { words: later`magnification range`, figures: ['reach'] },
  distance: { words: later`working distance`, figures: ['workingDistanceMm'] },
  effective: { words: later`effective f-number`, figures: ['effectiveFNumber'] },
  depth: { words: later`depth of field`, figures: ['usableDepthMm'] },
  needed: { words: later`depth of field needed`, figures: ['depthMm.needed'] },
  contrast: { words: later`contrast after diffraction`, figures: ['contrast'] },
  exposure: { words: later`exposure`, figures: ['exposureErrorStops', 'isoNeeded'] },
  angle: { words: later`shutter angle`, figures: ['shutterAngleDeg'] },
  flicker: { words: later`flicker`, figures: ['flickerResidual'] },
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
const ALL_BUT_SIZE = ALL_OF_THE_CHAIN.filter((result) => result !== 'size');

/** What moves the entrance pupil moves how a bubble is seen, and so what it needs. */
export const GOES_INTO: Partial<Record<DefName, Readonly<Record<string, readonly Result[]>>>> = {
  plan: {
    mains: ['flicker'],
    'circle-of-confusion': ['depth'],
  },
  deliver: {
    resolution: ['depth', 'contrast'],
  },
  body: {
    'flange-distance': ALL_BUT_SIZE,
  },
  recording: {
    resolution: ['contrast'],
    rate: ['exposure', 'angle', 'flicker'],
    area: ALL_BUT_REACH,
  },
  lens: {
    'focal-length': ALL_OF_THE_CHAIN,
    loss: ['exposure'],
    length: ALL_BUT_SIZE,
    extends: ALL_BUT_SIZE,
    'pupil-ratio': ['effective', 'depth', 'needed', 'contrast', 'exposure'],
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
    power: ALL_BUT_SIZE,
    length: ['distance'],
    loss: ['exposure'],
  },
  filter: {
    loss: ['exposure'],
    length: ['distance'],
  },
  light: {
    kind: ['flicker'],
    'emitting-size': ['exposure'],
    supply: ['flicker'],
    luminance: ['exposure'],
    illuminance: ['exposure'],
    modulation: ['flicker'],
    'modulation-depth': ['flicker'],
  },
  placement: {
    distance: ['exposure'],
    elevation: ['exposure'],
    azimuth: ['exposure'],
  },
  reading: {
    aperture: ['exposure'],
    shutter: ['exposure'],
    iso: ['exposure'],
    through: ['exposure'],
    magnification: ['exposure'],
    distance: ['exposure'],
  },
  subject: {
    kind: ['needed', 'exposure'],
    size: ['needed'],
    diameter: ['needed'],
    depth: ['needed'],
    sag: ['needed'],
  },
  shot: {
    field: ALL_BUT_REACH,
    magnification: ALL_BUT_REACH,
    ring: ALL_BUT_REACH,
    tilt: ['needed'],
    'tilt-axis': ['needed'],
    aperture: ['effective', 'depth', 'contrast', 'exposure'],
    shutter: ['exposure', 'angle', 'flicker'],
    iso: ['exposure'],
    filters: ['distance', 'exposure'],
  },
  relight: {
    dimmed: ['exposure'],
  },
  move: {
    kind: ['needed'],
    speed: ['needed'],
    along: ['needed'],
    'rail-angle': ['needed'],
    from: ['needed'],
    to: ['needed'],
    duration: ['needed'],
  },
  take: {
    duration: ['needed'],
  },
};

/** "Used for magnification range, working distance and depth of field."; empty where nothing follows from it. */
export function goesInto(of: DefName, key: string): string {
  const words = (GOES_INTO[of]?.[key] ?? []).map((result) => inLanguage(RESULTS[result].words));
  return words.length === 0 ? '' : message`Used for ${allOf(words)}.`;
}
