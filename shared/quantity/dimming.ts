/**
 * By how much a lamp is dimmed: in stops, or as dimmers say it, the share of the light that is left,
 * `40 %`. Inside in stops: 40 % is 1.3 of them. How a dimmer's own scale runs is another thing.
 */
import { later } from '../words/message.ts';
import type { Stops } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, NUMBER, POSITIVE, readNumber, shortest } from './number.ts';
import { PERCENT_UNITS, SHARE } from './percent.ts';
import { STOP_UNITS, stops } from './stops.ts';

/** More stops than any dimmer and set of filters takes: a larger bare number is a share. */
const MOST_STOPS = 10;

const stopsOf = (share: number): Stops => (0 - Math.log2(share)) as Stops;

function print(value: Stops, as?: string): string {
  if (as !== '%') return stops.print(value, as);
  const share = shortest(100 * 2 ** -value);
  const isExact = Math.abs(stopsOf(Number(share) / 100) - value) <= 1e-9 * Math.abs(value);
  return isExact ? `${share} %` : stops.print(value);
}

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
  print,
});
