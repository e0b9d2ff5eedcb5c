/** Every kind of quantity by its id. The schema's patterns are generated from here. */
import { angle } from './angle.ts';
import { bitrate } from './bitrate.ts';
import { bound } from './bound.ts';
import { capacity } from './capacity.ts';
import { colourTemperature, whiteBalance } from './colour-temperature.ts';
import { date } from './date.ts';
import { dimming } from './dimming.ts';
import { dioptre } from './dioptre.ts';
import { fNumber, fNumberRange } from './f-number.ts';
import { factor } from './factor.ts';
import { frequency, modulation } from './frequency.ts';
import { illuminance } from './illuminance.ts';
import { iso, isoOrAuto } from './iso.ts';
import type { QuantityKind } from './kind.ts';
import { length, lengthOrZero, lengthRange, offset } from './length.ts';
import { luminance } from './luminance.ts';
import { magnification } from './magnification.ts';
import { mass } from './mass.ts';
import { moveSpeed } from './move-speed.ts';
import { percent } from './percent.ts';
import { pixels } from './pixels.ts';
import { count, ratio } from './plain-number.ts';
import { playbackSpeed } from './playback-speed.ts';
import { power } from './power.ts';
import { rate } from './rate.ts';
import { ring } from './ring.ts';
import { shutter } from './shutter.ts';
import { size } from './size.ts';
import { speed } from './speed.ts';
import { stops } from './stops.ts';
import { tempo } from './tempo.ts';
import { thicknessRange } from './thickness.ts';
import { time, timeOrZero } from './time.ts';
import { beats, join, timelineLength } from './timeline-length.ts';
import { turn } from './turn.ts';

export const KINDS = {
  angle,
  beats,
  bitrate,
  bound,
  capacity,
  'colour-temperature': colourTemperature,
  count,
  date,
  dimming,
  dioptre,
  'f-number': fNumber,
  'f-number-range': fNumberRange,
  factor,
  frequency,
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
  modulation,
  'move-speed': moveSpeed,
  offset,
  percent,
  pixels,
  'playback-speed': playbackSpeed,
  power,
  rate,
  ratio,
  ring,
  shutter,
  size,
  speed,
  stops,
  tempo,
  'thickness-range': thicknessRange,
  time,
  'time-or-zero': timeOrZero,
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

export type { Failure, Parsed, QuantityKind } from './kind.ts';
