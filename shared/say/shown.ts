/** A value of a plan as it is shown to a reader: by its kind of quantity, in the reader's units. */

import { kindOf, type QuantityId, type QuantityValue } from '../quantity/index.ts';
import type { Ends } from '../quantity/rough.ts';
import { message } from '../words/message.ts';
import { spanWords } from './between.ts';
import { type Say, signed } from './say.ts';

type Shown<Id extends QuantityId> = (value: QuantityValue<Id>, say: Say, id: Id) => string;

/** As it is written in its usual spelling. */
const exact = (value: unknown, _: Say, id: QuantityId): string => signed(kindOf(id).print(value));

/** To three digits and not under whole numbers; a word that stands in its place as it is. */
const rounded = (value: unknown, say: Say, id: QuantityId): string =>
  exact(typeof value === 'number' ? toThreeDigits(value) : value, say, id);

const toThreeDigits = (value: number): number =>
  Math.abs(value) < 1000 ? Number(value.toPrecision(3)) : Math.round(value);

const length = (mm: number, say: Say): string => say.length(mm);
const seconds = (value: number, say: Say): string => say.seconds(value);

const SHOWN: { readonly [Id in QuantityId]: Shown<Id> } = {
  angle: (radians, say) => say.angle(radians),
  beats: exact,
  bitrate: rounded,
  bound(bound, say) {
    switch (bound.kind) {
      case 'length':
        return say.length(bound.value);
      case 'stops':
        return say.stops(bound.value);
      case 'percent':
        return say.percent(bound.value);
      case 'angle':
        return say.angle(bound.value);
      case 'pixels':
        return say.pixels(bound.value);
      case 'time':
        return say.seconds(bound.value);
      case 'mass':
        return say.kilograms(bound.value);
    }
  },
  capacity: (bytes, say) => say.bytes(bytes),
  'colour-temperature': rounded,
  'colour-temperature-range': exact,
  count: exact,
  date: exact,
  dimming: (stops, say) => message`${say.stops(stops)}, ${say.percent(2 ** -stops)} of the light`,
  dioptre: rounded,
  'effective-f-number': rounded,
  'f-number': (value, say) => say.fNumber(value),
  'f-number-range': ({ from, to }, say) =>
    `${say.fNumber(from)} to ${say.fNumber(to).replace('f/', '')}`,
  factor: rounded,
  frequency: rounded,
  illuminance: rounded,
  iso: exact,
  hours: exact,
  'iso-or-auto': exact,
  join: exact,
  length,
  'length-or-zero': length,
  'length-range': ({ from, to }, say) => `${say.length(from)} to ${say.length(to)}`,
  luminance: rounded,
  magnification: (value, say) => say.magnification(value),
  mass: (kg, say) => say.kilograms(kg),
  'mired-shift': rounded,
  modulation: rounded,
  'move-speed': (speed, say) =>
    speed.kind === 'line'
      ? SHOWN.speed(speed.value, say, 'speed')
      : SHOWN.turn(speed.value, say, 'turn'),
  offset: length,
  'over-under': (stops, say) =>
    stops < 0 ? message`${say.stops(-stops)} under` : message`${say.stops(stops)} over`,
  percent: (share, say) => say.percent(share),
  pixels: (size, say) => say.resolution(size),
  'playback-speed': ({ from, to }, say) =>
    from === to
      ? say.percent(to)
      : message`${say.percent(from).replace('%', '')} to ${say.percent(to)}`,
  power: rounded,
  rate: exact,
  ratio: rounded,
  ring: (value, say) => (typeof value === 'string' ? value : say.length(value)),
  shutter: (shutter, say) =>
    shutter.kind === 'angle' ? say.angle(shutter.angle) : say.shutter(shutter.seconds),
  'sensor-size': ({ width, height }, say) => say.size(width, height),
  size: ({ width, height }, say) => say.size(width, height),
  speed: (mmPerS, say) => say.speed(mmPerS),
  stops: (value, say) => say.stops(value),
  't-stop': rounded,
  tempo: exact,
  'thickness-range': exact,
  time: seconds,
  'time-of-day': exact,
  'time-or-zero': seconds,
  'time-range': exact,
  'timeline-length': exact,
  turn: (radPerS, say) => `${say.angle(radPerS)}/s`,
  'white-balance': rounded,
};

export function shown<Id extends QuantityId>(id: Id, value: unknown, say: Say): string {
  return SHOWN[id](value as QuantityValue<Id>, say.written, id);
}

/** A value of a plan, as a range where it was written as one. */
export const shownField = (
  id: QuantityId,
  { value, range }: { readonly value: unknown; readonly range?: Ends<unknown> },
  say: Say,
): string =>
  range ? spanWords(shown(id, range.low, say), shown(id, range.high, say)) : shown(id, value, say);
