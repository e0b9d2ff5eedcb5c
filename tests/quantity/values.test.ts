import { describe, expect, it } from 'vitest';
import { kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { each } from '../support/each.ts';

const values: readonly (readonly [QuantityId, string, unknown])[] = [
  // The international yard and pound agreement of 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg.
  ['length', '1 in', 25.4],
  ['length', '1 ft', 304.8],
  ['mass', '1 lb', 0.45359237],
  ['mass', '16 oz', 0.45359237],
  ['length', '0.85 m', 850],
  ['time', '18 ms', 0.018],
  ['time', '9 ms', 0.009],
  // SMPTE ST 12-1: the NTSC-derived rates run at 1000/1001 of the whole ones.
  ['rate', '29.97 fps', { n: 30000, d: 1001 }],
  ['rate', '23.976 fps', { n: 24000, d: 1001 }],
  ['rate', '59.94 fps', { n: 60000, d: 1001 }],
  ['rate', '119.88 fps', { n: 120000, d: 1001 }],
  ['rate', '12.5 fps', { n: 25, d: 2 }],
  ['rate', '50 fps', { n: 50, d: 1 }],
  ['shutter', '1/50 s', { kind: 'time', seconds: 0.02 }],
  ['shutter', '180 deg', { kind: 'angle', angle: Math.PI }],
  ['f-number', 'f/22', 22],
  ['effective-f-number', 'f/9.6', 9.6],
  ['effective-f-number', '9.6', 9.6],
  ['bitrate', '60 Mb/s', 60e6],
  // A stop is a factor of two of light: 25 % is two of them, 40 % −log2(0.4).
  ['dimming', '25 %', 2],
  ['dimming', '40 %', -Math.log2(0.4)],
  ['dimming', '100 %', 0],
  // Over is more light, so positive; under is less.
  ['over-under', '0.3 stops under', -0.3],
  ['over-under', '1 stop over', 1],
  ['over-under', '0 stops over', 0],
  ['capacity', '128 GB', 128e9],
  ['thickness-range', '80 to 700 nm', { from: 80, to: 700 }],
  ['time-range', '40 to 52 s', { from: 40, to: 52 }],
  ['time-range', '0 to 1.5 min', { from: 0, to: 90 }],
  ['playback-speed', '100 to 25 %', { from: 1, to: 0.25 }],
  ['time-of-day', '09:30', 34_200],
  ['time-of-day', '00:00', 0],
  ['hours', '12:30 to 13:15', { from: 45_000, to: 47_700 }],
  ['date', '2028-02-29', { year: 2028, month: 2, day: 29 }],
  ['timeline-length', '2 bars', { amount: 2, unit: 'bars' }],
  ['join', 'dissolve 12 frames', { kind: 'dissolve', length: { amount: 12, unit: 'frames' } }],
  ['offset', '-20 mm', -20],
];

describe('values in the units inside', () => {
  it('each is read as its value', () => {
    each(
      values,
      ([id, text, value]) => {
        expect(kindOf(id).parse(text)).toEqual({ ok: true, value });
      },
      ([id, text]) => `${id}: ${text}`,
    );
  });
});
