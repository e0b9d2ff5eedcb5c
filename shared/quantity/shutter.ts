/**
 * Shutter, as the time it is open or as the angle of a rotary shutter: 360° is the whole frame
 * time. `1/50 s` is 0.02 s exactly as written, not the 2^(k/3) value it stands for.
 */

import { later } from '../words/message.ts';
import { DEGREE, degrees, TURN } from './angle.ts';
import type { Rad, Sec } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, NOT_ZERO, POSITIVE, readNumber, shortest } from './number.ts';

export type Shutter =
  | { readonly kind: 'time'; readonly seconds: Sec }
  | { readonly kind: 'angle'; readonly angle: Rad };

const S = '(?:s|sec|secs|second|seconds)';
/** Above 0, up to the whole frame time. */
const OPEN = `[+]?${NOT_ZERO}${TURN}`;

/** A plain time as 1/n s where that is what it is, in decimals otherwise. */
function printTime(seconds: number): string {
  const inverse = 1 / seconds;
  const whole = Math.abs(inverse - Math.round(inverse)) < 1e-9 * inverse;
  return seconds < 1 && whole ? `1/${Math.round(inverse)} s` : `${shortest(seconds)} s`;
}

export const shutter: QuantityKind<Shutter> = compoundKind<Shutter>({
  id: 'shutter',
  title: later`shutter time or angle`,
  units: ['s', 'ms', 'deg'],
  unitSpellings: ['s', 'ms', 'deg', 'sec', ...DEGREE],
  examples: ['1/50 s', '0.5 s', '180 deg'],
  body: `1/(${POSITIVE})(?:${GAP}${S})?|(${POSITIVE})${GAP}(?:${S}|(ms))|(${OPEN})${GAP}(?:${DEGREE.join('|')})`,
  read([inverse, number, milli, angle]) {
    if (angle !== undefined) {
      const value = { kind: 'angle', angle: ((readNumber(angle) * Math.PI) / 180) as Rad } as const;
      return { value, usual: `${angle} deg` };
    }
    const seconds =
      inverse !== undefined
        ? 1 / readNumber(inverse)
        : milli
          ? readNumber(number ?? '') / 1000
          : readNumber(number ?? '');
    const value = { kind: 'time', seconds: seconds as Sec } as const;
    return {
      value,
      usual: inverse !== undefined ? `1/${inverse} s` : `${number} ${milli ? 'ms' : 's'}`,
    };
  },
  likelyUnits: (value) => (value > 12 && value <= 360 ? ['deg', 'ms'] : ['s', 'ms']),
  repairs: (text) => (/^[0-9.]+$/.test(text) && Number(text) > 12 ? [`1/${text} s`] : []),
  print: (value) =>
    value.kind === 'angle' ? `${shortest(degrees(value.angle))} deg` : printTime(value.seconds),
});
