/** Light and what gives or takes it. */
import { later } from '../words/message.ts';
import type { Kelvin, Lux, Mired, Nit, Range, Stops, Watt } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, NUMBER, POSITIVE, readNumber, shortest } from './number.ts';
import { PERCENT_UNITS, SHARE } from './plain.ts';
import { scalarKind } from './scalar.ts';
import type { Unit } from './unit.ts';
import { unitRange } from './unit-range.ts';
import { wordOr } from './word-or.ts';

const ALSO_STOPS = ['stop', 'Stops', 'EV', 'ev'];
/** As stops are understood, best first. */
const STOP_UNITS: readonly string[] = ['stops', ...ALSO_STOPS];
/** More than any glass, filter or dimmer takes: a larger bare number is something else. */
const MOST_LIKELY = 20;

/** Stops of light: factors of two. */
export const stops: QuantityKind<Stops> = scalarKind<Stops>({
  id: 'stops',
  title: later`stops`,
  sign: 'zero-up',
  units: [{ usual: 'stops', one: 'stop', also: ALSO_STOPS }],
  likelyUnits: (value) => (value > MOST_LIKELY ? [] : ['stops']),
  examples: ['2 stops', '0.3 stops'],
});

/** More stops than any dimmer and set of filters takes: a larger bare number is a share. */
const MOST_STOPS = 10;

const stopsOf = (share: number): Stops => (0 - Math.log2(share)) as Stops;

function printDimming(value: Stops, as?: string): string {
  if (as !== '%') return stops.print(value, as);
  const share = shortest(100 * 2 ** -value);
  const isExact = Math.abs(stopsOf(Number(share) / 100) - value) <= 1e-9 * Math.abs(value);
  return isExact ? `${share} %` : stops.print(value);
}

/**
 * By how much a lamp is dimmed: in stops, or as dimmers say it, the share of the light that is left,
 * `40 %`. Inside in stops: 40 % is 1.3 of them. How a dimmer's own scale runs is another thing.
 */
export const dimming: QuantityKind<Stops> = compoundKind<Stops>({
  id: 'dimming',
  title: later`dimming in stops, or light left in %`,
  units: ['stops', '%'],
  unitSpellings: [...STOP_UNITS, ...PERCENT_UNITS],
  examples: ['1 stop', '40 %'],
  body: `(${NUMBER})${GAP}(?:${[...STOP_UNITS].sort((a, b) => b.length - a.length).join('|')})|(?=${POSITIVE})(${SHARE})${GAP}(?:${PERCENT_UNITS.join('|')})`,
  read([number, share = '']) {
    if (number === undefined)
      return { value: stopsOf(readNumber(share) / 100), usual: `${share} %` };
    return {
      value: readNumber(number) as Stops,
      usual: `${number} ${number === '1' ? 'stop' : 'stops'}`,
    };
  },
  likelyUnits: (value) => (value > MOST_STOPS ? ['%'] : ['stops']),
  print: printDimming,
});

/** Illuminance, lux. 1 klx is 1000 lx. */
export const illuminance: QuantityKind<Lux> = scalarKind<Lux>({
  id: 'illuminance',
  title: later`illuminance`,
  sign: 'positive',
  units: [
    { usual: 'lx', also: ['lux', 'Lux', 'LX'] },
    { usual: 'klx', also: ['klux'], times: 1000 },
  ],
  examples: ['900 lx', '12000 lx'],
});

/** Luminance, cd/m². */
export const luminance: QuantityKind<Nit> = scalarKind<Nit>({
  id: 'luminance',
  title: later`luminance`,
  sign: 'positive',
  units: [{ usual: 'cd/m2', also: ['cd/m\u00b2', 'cd/m^2', 'nit', 'nits', 'nt'] }],
  examples: ['3000 cd/m2', '12 cd/m2'],
});

const KELVIN_UNITS: readonly Unit[] = [{ usual: 'K', also: ['k', 'Kelvin', 'kelvin'] }];

/** Colour temperature in kelvin. */
export const colourTemperature: QuantityKind<Kelvin> = scalarKind<Kelvin>({
  id: 'colour-temperature',
  title: later`colour temperature`,
  sign: 'positive',
  units: KELVIN_UNITS,
  examples: ['5600 K', '3200 K'],
});

/** What a bi-colour lamp can be set to. */
export const colourTemperatureRange: QuantityKind<Range<Kelvin>> = unitRange<Kelvin>({
  id: 'colour-temperature-range',
  title: later`two colour temperatures`,
  units: KELVIN_UNITS,
  examples: ['2700 to 6500 K', '3200 to 5600 K'],
  single: false,
});

/** By how much a gel moves a colour temperature, in mired; positive is warmer. */
export const miredShift: QuantityKind<Mired> = scalarKind<Mired>({
  id: 'mired-shift',
  title: later`mired shift`,
  sign: 'any',
  units: [{ usual: 'mired', also: ['mireds', 'Mired', 'MIRED', 'MK-1'] }],
  examples: ['131 mired', '-78 mired'],
});

/** White balance, which may be left to the body. */
export const whiteBalance: QuantityKind<Kelvin | 'auto'> = wordOr(
  {
    id: 'white-balance',
    title: later`white balance`,
    words: { auto: ['AUTO', 'automatic'] },
    examples: ['5600 K', 'auto'],
  },
  colourTemperature,
);

/** Electrical power of a lamp, in watts. */
export const power: QuantityKind<Watt> = scalarKind<Watt>({
  id: 'power',
  title: later`power`,
  sign: 'positive',
  units: [
    { usual: 'W', also: ['w', 'watt', 'watts', 'Watt', 'Watts'] },
    { usual: 'kW', also: ['kw', 'KW'], times: 1000 },
  ],
  examples: ['60 W', '2 kW'],
});
