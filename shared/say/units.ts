/**
 * How a number is said, by what it is a number of. `symbol` stands in tables of the documentation,
 * `ending` at the end of a key of the JSON that holds such a number.
 */
import type { Say } from './say.ts';

interface UnitWords {
  readonly symbol: string;
  readonly ending: string;
  readonly say: (value: number, say: Say) => string;
}

const unit = (symbol: string, ending: string, say: UnitWords['say']): UnitWords => ({
  symbol,
  ending,
  say,
});

const plain: UnitWords['say'] = (value, say) => say.number(value);
const percent: UnitWords['say'] = (value, say) => say.percent(value);

export const UNITS = {
  length: unit('mm', 'Mm', (value, say) => say.length(value)),
  micrometres: unit('µm', 'Um', (value, say) => say.micrometres(value)),
  nanometres: unit('nm', 'Nm', (value, say) => `${say.number(value)} nm`),
  speed: unit('mm/s', 'MmPerS', (value, say) => say.speed(value)),
  degrees: unit('°', 'Deg', (value, say) => `${say.number(value)}°`),
  stops: unit('stops', 'Stops', (value, say) => say.stops(value)),
  /** More or less light than is right. */
  signedStops: unit('stops', 'Stops', (value, say) => say.stopsSigned(value)),
  fNumber: unit('', 'FNumber', (value, say) => say.fNumber(value)),
  magnification: unit('', '', (value, say) => say.magnification(value)),
  iso: unit('', '', (value, say) => say.iso(value)),
  seconds: unit('s', 'S', (value, say) => say.seconds(value)),
  shutter: unit('s', 'Seconds', (value, say) => say.shutter(value)),
  pixels: unit('pixels', 'Px', (value, say) => say.pixels(value)),
  bytes: unit('bytes', 'Bytes', (value, say) => say.bytes(value)),
  mass: unit('kg', 'Kg', (value, say) => `${say.number(value)} kg`),
  moment: unit('N·m', 'NewtonMetres', (value, say) => `${say.number(value)} N·m`),
  /** A part of a whole, in percent. */
  share: unit('0 to 1', '', percent),
  /** One over another, in percent: may be more than all of it. */
  ratio: unit('', '', percent),
  /** A part of a whole as formulas have it, a bare number. */
  fraction: unit('0 to 1', '', plain),
  /** A bare number. */
  number: unit('', '', plain),
} as const satisfies Readonly<Record<string, UnitWords>>;

export type Unit = keyof typeof UNITS;
