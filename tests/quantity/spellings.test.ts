import { describe, expect, it } from 'vitest';
import { kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { each } from '../support/each.ts';

describe('letters for zeros', () => {
  it.each([
    ['iso', '80O', '800'],
    ['shutter', '1/1OO s', '1/100 s'],
    ['length', '2o mm', '20 mm'],
  ] as const)('of %s %s is first meant as %s', (kind, text, meant) => {
    const read = kindOf(kind).parse(text);
    expect(read.ok).toBe(false);
    expect(read).toMatchObject({ likely: expect.arrayContaining([meant]) });
    if (!read.ok) expect(read.likely[0]).toBe(meant);
  });
});

const understood: readonly (readonly [QuantityId, string, string])[] = [
  ['magnification', '0.6000000000x', '0.6x'],
  ['magnification', '+0.6x', '0.6x'],
  ['length', '2e2 mm', '200 mm'],
  ['length', '1.50e-3 m', '0.0015 m'],
  ['length', '+200 mm', '200 mm'],
  ['iso', '1.6e3', '1600'],
  ['count', '+3', '3'],
  ['percent', '5e1 %', '50 %'],
  ['shutter', '1/5e1 s', '1/50 s'],
  ['shutter', '1.8E2 deg', '180 deg'],
  ['rate', '2.997e1 fps', '29.97 fps'],
  ['rate', '29.970000000000 fps', '29.97 fps'],
  ['thickness-range', '8e1 to 7e2 nm', '80 to 700 nm'],
  ['pixels', '1920x1080', '1920 x 1080'],
  ['pixels', '1920×1080', '1920 x 1080'],
  ['size', '36×24mm', '36 x 24 mm'],
  ['size', '3.6 cm x 24 mm', '36 x 24 mm'],
  // ISO 1007 has frames of 36 x 24 mm for 135 film; the Four Thirds standard 17.3 x 13 mm.
  ['sensor-size', 'full-frame', '36 x 24 mm'],
  ['sensor-size', 'four-thirds', '17.3 x 13 mm'],
  // Common practice.
  ['sensor-size', 'one-inch', '13.2 x 8.8 mm'],
  ['sensor-size', 'medium-format-44', '43.8 x 32.9 mm'],
  ['sensor-size', '36×24mm', '36 x 24 mm'],
  ['length', '200mm', '200 mm'],
  ['length', '5 µm', '5 um'],
  ['length', '7.9"', '7.9 in'],
  ['length-range', '1.2 m - 0.85 m', '0.85 to 1.2 m'],
  ['length-range', '850 mm to 1.2 m', '0.85 to 1.2 m'],
  ['magnification', '1:2', '0.5x'],
  ['magnification', '0.5:1', '0.5x'],
  ['magnification', '1.5 ×', '1.5x'],
  ['iso', 'ISO 800', '800'],
  ['iso-or-auto', 'Auto', 'auto'],
  ['shutter', '1/50', '1/50 s'],
  ['shutter', '180°', '180 deg'],
  ['shutter', '1/50sec', '1/50 s'],
  ['f-number', 'F16', 'f/16'],
  ['f-number', 'f16', 'f/16'],
  ['f-number', 'f 5.6', 'f/5.6'],
  ['f-number-range', 'f/4-32', 'f/4 to 32'],
  ['f-number-range', 'F2.8 - F22', 'f/2.8 to 22'],
  ['t-stop', 'T/3.4', 'T3.4'],
  ['t-stop', 't3.4', 'T3.4'],
  ['f-number-range', 'f/4–f/32', 'f/4 to 32'],
  ['f-number-range', 'f/32 to f/4', 'f/4 to 32'],
  ['white-balance', '5600K', '5600 K'],
  ['rate', '50fps', '50 fps'],
  ['rate', '30000/1001 fps', '29.97 fps'],
  // A divisor of 1001 other than itself is no decimal either.
  ['rate', '11000/1001 frames/s', '11000/1001 fps'],
  ['rate', '30030/1001 fps', '30 fps'],
  ['luminance', '3000 cd/m²', '3000 cd/m2'],
  ['angle', '4°', '4 deg'],
  ['angle', '−4 deg', '-4 deg'],
  ['stops', '1 stops', '1 stop'],
  ['dimming', '1 stops', '1 stop'],
  ['dimming', '40%', '40 %'],
  ['over-under', '1 stops over', '1 stop over'],
  ['over-under', '0.3 EV underexposed', '0.3 stops under'],
  ['over-under', '0.3 stops too dark', '0.3 stops under'],
  ['dimming', '40 percent', '40 %'],
  ['dioptre', '+2 dpt', '2 dpt'],
  ['thickness-range', '80–700nm', '80 to 700 nm'],
  ['thickness-range', '80 nm to 0.7 um', '0.08 to 0.7 um'],
  // In one unit it would have more digits than a number may.
  ['thickness-range', '3nm to 999999999um', '0.003 to 999999999 um'],
  ['thickness-range', '999999999um to 3nm', '3 nm to 999999999 um'],
  ['playback-speed', '100% to 25%', '100 to 25 %'],
  ['beats', '1 beats', '1 beat'],
  ['join', 'Dissolve 12 frames', 'dissolve 12 frames'],
];

describe('other spellings', () => {
  it('each spelling is understood and usually written so', () => {
    each(
      understood,
      ([id, text, usual]) => {
        expect(kindOf(id).parse(text)).toMatchObject({ ok: true, usual });
      },
      ([id, text]) => `${id}: ${text}`,
    );
  });
});

const wrong: readonly (readonly [QuantityId, string, string, readonly string[]])[] = [
  ['length', '200', 'no-unit', ['200 mm', '200 cm']],
  ['length', '0.85', 'no-unit', ['0.85 mm', '0.85 m']],
  ['length', '1,5 mm', 'decimal-comma', ['1.5 mm']],
  ['length', '1,5', 'decimal-comma', ['1.5 mm', '1.5 m']],
  ['length', '1,500 mm', 'not-a-number', ['1500 mm', '1.500 mm']],
  ['length', '0200 mm', 'not-a-number', ['200 mm']],
  ['length', '.5 mm', 'not-a-number', ['0.5 mm']],
  ['length', '1e999 mm', 'not-a-number', []],
  ['length', '1e-999 mm', 'not-a-number', []],
  ['length', '1e9 mm', 'not-a-number', []],
  ['length', '0.0000000000001 mm', 'out-of-range', []],
  ['iso', '1.000', 'not-whole', ['1', '1000']],
  ['length', '1_000 mm', 'not-a-number', ['1000 mm']],
  ['length', '0 mm', 'out-of-range', []],
  ['length', '-5 mm', 'out-of-range', []],
  ['length', '9999999999 mm', 'out-of-range', []],
  ['length', '200 mn', 'unknown-unit', ['200 mm', '200 in', '200 cm']],
  ['length', 'Infinity', 'form', []],
  ['length', 'long', 'form', []],
  // Common practice: what is sold by these names differs by 5 % and more.
  ['sensor-size', 'aps-c', 'form', ['23.5 x 15.6 mm', '22.3 x 14.9 mm']],
  ['sensor-size', 'APS-C sensor', 'form', ['23.5 x 15.6 mm', '22.3 x 14.9 mm']],
  ['sensor-size', 'Super 35', 'form', ['24.9 x 18.7 mm', '24.6 x 13.8 mm']],
  ['sensor-size', 'FULL FRAME', 'form', ['36 x 24 mm']],
  ['sensor-size', '1"', 'form', ['13.2 x 8.8 mm']],
  ['sensor-size', '36 x 24', 'no-unit', ['36 x 24 mm']],
  ['sensor-size', '35.9 x 23.9 mm (full frame)', 'unknown-unit', ['35.9 x 23.9 mm']],
  ['sensor-size', 'large', 'form', []],
  ['f-number-range', '1:2.8-22', 'no-unit', ['f/2.8 to 22']],
  ['t-stop', '3.4', 'no-unit', ['T3.4']],
  ['mass', '1,5 kg', 'decimal-comma', ['1.5 kg']],
  ['mass', '60', 'no-unit', ['60 g', '60 kg']],
  ['illuminance', '900 cd/m2', 'unknown-unit', ['900 lx']],
  ['pixels', '1,920 x 1,080', 'not-a-number', ['1920 x 1080']],
  ['iso', '0800', 'not-a-number', ['800']],
  ['iso', '12.5', 'not-whole', ['12', '13']],
  ['iso', '12,5', 'not-whole', ['12', '13']],
  ['iso', '1.250', 'not-whole', ['1250', '1', '2']],
  ['pixels', '1920.5 x 1080', 'not-whole', ['1920 x 1080', '1921 x 1080']],
  ['iso', '0x320', 'form', []],
  ['f-number', '16', 'no-unit', ['f/16']],
  ['f-number', '1/16', 'no-unit', ['f/16']],
  ['f-number-range', '4 to 32', 'no-unit', ['f/4 to 32']],
  ['shutter', '180', 'no-unit', ['1/180 s', '180 deg', '180 ms']],
  ['shutter', '50', 'no-unit', ['1/50 s', '50 deg', '50 ms']],
  ['shutter', '400 deg', 'out-of-range', []],
  ['shutter', '0 s', 'out-of-range', []],
  ['white-balance', '5600', 'no-unit', ['5600 K']],
  ['white-balance', 'atuo', 'form', ['auto']],
  ['rate', '29,97 fps', 'decimal-comma', ['29.97 fps']],
  ['rate', '25', 'no-unit', ['25 fps']],
  ['bitrate', '60 mb/s', 'unknown-unit', ['60 Mb/s', '60 MB/s']],
  ['magnification', '1.5', 'no-unit', ['1.5x']],
  ['frequency', '50', 'no-unit', ['50 Hz']],
  ['modulation', 'nome', 'form', ['none']],
  ['percent', '140 %', 'out-of-range', []],
  ['dimming', '40', 'no-unit', ['40 %']],
  ['dimming', '2', 'no-unit', ['2 stops']],
  ['dimming', '0 %', 'out-of-range', []],
  ['dimming', '140 %', 'out-of-range', []],
  // No share of the light is as many stops.
  ['stops', '40 %', 'unknown-unit', []],
  ['stops', '40', 'no-unit', []],
  ['time-of-day', '9.30', 'form', ['09:30']],
  ['time-of-day', '5:30 pm', 'form', ['17:30']],
  ['time-of-day', '12 am', 'form', ['00:00']],
  ['time-of-day', '1745', 'form', ['17:45']],
  ['time-of-day', '24:00', 'form', ['00:00']],
  ['time-of-day', '25:00', 'form', []],
  ['hours', '12.30 - 1:15 pm', 'form', ['12:30 to 13:15']],
  ['hours', 'noon', 'form', []],
  ['date', '2027-02-29', 'form', []],
  ['date', '31.12.2027', 'form', ['2027-12-31']],
  ['date', '2027/3/2', 'form', ['2027-03-02']],
  ['date', '3/2/2027', 'form', []],
  ['ring', 'infinty', 'form', ['infinity']],
  ['timeline-length', '2', 'no-unit', ['2 s', '2 bars', '2 beats', '2 frames']],
  ['join', '12 frames', 'form', ['dissolve 12 frames']],
];

describe('what is wrong, and what was likely meant', () => {
  it('each wrong one is told what is wrong with it', () => {
    each(
      wrong,
      ([id, text, code, likely]) => {
        const parsed = kindOf(id).parse(text);
        expect(parsed).toMatchObject({ ok: false, code });
        if (!parsed.ok) expect(parsed.likely.slice(0, likely.length || 9)).toEqual(likely);
      },
      ([id, text]) => `${id}: ${text}`,
    );
  });
});
