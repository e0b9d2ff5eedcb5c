/** Every kind of quantity by its id. The schema's patterns are generated from here. */

import { bound } from './bound.ts';
import { beats, join, playbackSpeed, tempo, timelineLength } from './edit.ts';
import type { QuantityKind } from './kind.ts';
import {
  length,
  lengthOrZero,
  lengthRange,
  mass,
  offset,
  ring,
  size,
  thicknessRange,
} from './lengths-and-mass.ts';
import {
  dioptre,
  effectiveFNumber,
  factor,
  fNumber,
  fNumberRange,
  magnification,
  tStop,
} from './lens.ts';
import {
  colourTemperature,
  colourTemperatureRange,
  dimming,
  illuminance,
  luminance,
  miredShift,
  power,
  stops,
  whiteBalance,
} from './light.ts';
import { angle, moveSpeed, speed, turn } from './movement.ts';
import { overUnder } from './over-under.ts';
import { count, percent, ratio } from './plain.ts';
import { bitrate, capacity, iso, isoOrAuto, pixels, rate, shutter } from './recording.ts';
import { sensorSize } from './sensor-size.ts';
import { hours, timeOfDay } from './time-of-day.ts';
import { date, frequency, modulation, time, timeOrZero, timeRange } from './times.ts';

export const KINDS = {
  angle,
  beats,
  bitrate,
  bound,
  capacity,
  'colour-temperature': colourTemperature,
  'colour-temperature-range': colourTemperatureRange,
  count,
  date,
  dimming,
  dioptre,
  'effective-f-number': effectiveFNumber,
  'f-number': fNumber,
  'f-number-range': fNumberRange,
  factor,
  frequency,
  hours,
  illuminance,
  iso,
  'iso-or-auto': isoOrAuto,
  join,
  length,
  'length-or-zero': lengthOrZero,
  'length-range': lengthRange,
  luminance,
  magnification,
  mass,
  'mired-shift': miredShift,
  modulation,
  'move-speed': moveSpeed,
  offset,
  'over-under': overUnder,
  percent,
  pixels,
  'playback-speed': playbackSpeed,
  power,
  rate,
  ratio,
  ring,
  'sensor-size': sensorSize,
  shutter,
  size,
  speed,
  stops,
  tempo,
  't-stop': tStop,
  'thickness-range': thicknessRange,
  time,
  'time-of-day': timeOfDay,
  'time-or-zero': timeOrZero,
  'time-range': timeRange,
  'timeline-length': timelineLength,
  turn,
  'white-balance': whiteBalance,
} as const;

export type QuantityId = keyof typeof KINDS;

/** The type of a kind's value. */
export type QuantityValue<Id extends QuantityId> =
  (typeof KINDS)[Id] extends QuantityKind<infer T> ? T : never;

/** The kind, where its value's type doesn't matter. */
export const kindOf = (id: QuantityId): QuantityKind<unknown> => KINDS[id] as QuantityKind<unknown>;

export type { Failure, QuantityKind } from './kind.ts';
