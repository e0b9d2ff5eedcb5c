/** A number reads the same wherever it is said: as a figure, or as a value that a plan gives. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS, type QuantityId } from '../../shared/quantity/index.ts';
import { Say } from '../../shared/say/say.ts';
import { shown } from '../../shared/say/shown.ts';

const metric = new Say();
const imperial = new Say(() => 'inches');

/** What is said of a figure, and the kind that a plan would write it as. */
const SAID: Partial<Record<QuantityId, (say: Say, value: number) => string>> = {
  length: (say, mm) => say.length(mm),
  'f-number': (say, n) => say.fNumber(n),
  mass: (say, kg) => say.kilograms(kg),
  time: (say, s) => say.seconds(s),
  angle: (say, radians) => say.angle(radians),
  magnification: (say, m) => say.magnification(m),
  capacity: (say, bytes) => say.bytes(bytes),
  stops: (say, stops) => say.stops(stops),
  percent: (say, share) => say.percent(share),
};

describe('a figure and a written value', () => {
  it.each([
    ['f-number', 62.3, 'f/62'],
    ['length', 1000, '1 m'],
    ['length', 1234, '1.23 m'],
    ['length', 0.0075, '7.5 µm'],
    ['mass', 0.7, '700 g'],
    ['mass', 1.5, '1.5 kg'],
    ['time', 5502, '91.7 min'],
    ['time', 7200, '2 h'],
    ['time', 0.018, '18 ms'],
    ['time', 150, '150 s'],
    ['angle', Math.PI, '180°'],
    ['angle', (-4 * Math.PI) / 180, '\u22124°'],
    ['capacity', 128e9, '128 GB'],
  ] as const)('%s of %d: %s', (id, value, said) => {
    expect(SAID[id]!(metric, value)).toBe(said);
    expect(shown(id, value, metric)).toBe(said);
  });

  it('that two calculations give with other last digits are one number', () => {
    const height = 33.75;
    expect(metric.length(height * (1 - 4e-16))).toBe('33.8 mm');
    expect(metric.length(height)).toBe('33.8 mm');
    expect(metric.length(-height * (1 - 4e-16))).toBe('\u221233.8 mm');
  });

  it('have one unit, and the same digits where two say the value', () => {
    const twoDigits = fc
      .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -3, max: 4 }))
      .map(([digits, power]) => Number(`${digits}e${power}`));
    for (const [id, say] of Object.entries(SAID))
      for (const reader of [metric, imperial]) {
        // 0.995 stops in three digits are 1 stop in two.
        const unit = (text: string) => text.replace(/[−0-9.]+/, '').replace(/^ stop$/, ' stops');
        fc.assert(
          fc.property(fc.double({ min: 1e-4, max: 1e5, noNaN: true }), (value) => {
            expect(unit(shown(id as QuantityId, value, reader))).toBe(unit(say(reader, value)));
          }),
        );
        if (reader === metric && id !== 'angle' && id !== 'time')
          fc.assert(
            fc.property(twoDigits, (value) => {
              expect(shown(id as QuantityId, value, reader)).toBe(say(reader, value));
            }),
          );
      }
  });

  it('differ only in a third digit that somebody wrote', () => {
    expect(metric.length(5.25)).toBe('5.3 mm');
    expect(shown('length', 5.25, metric)).toBe('5.25 mm');
  });
});

describe('lengths as the reader prefers them', () => {
  it('are in inches, and feet from three', () => {
    expect(imperial.length(200)).toBe('7.9 in');
    expect(imperial.length(1219.2)).toBe('4 ft');
    expect(imperial.size(508, 254)).toBe('20 × 10 in');
    expect(shown('size', { width: 508, height: 254 }, imperial)).toBe('20 × 10 in');
    expect(shown('length-range', { from: 50.8, to: 76.2 }, imperial)).toBe('2 in to 3 in');
    expect(imperial.length(Number.POSITIVE_INFINITY)).toBe('endless');
  });

  it('are compared in one unit', () => {
    expect(metric.lengths2(950, 1200)).toEqual(['0.95 m', '1.2 m']);
    expect(metric.lengths2(0.0049, 1.6)).toEqual(['0.0049 mm', '1.6 mm']);
    expect(metric.lengths2(1.694, 1.7)).toEqual(['1.69 mm', '1.7 mm']);
  });
});

it('every kind of quantity can be shown as its examples', () => {
  for (const [id, kind] of Object.entries(KINDS))
    for (const example of kind.examples) {
      const parsed = kind.parse(example);
      const text = parsed.ok ? shown(id as QuantityId, parsed.value, metric) : '';
      expect(text, `${id}: ${example}`).toMatch(/^[^-]/);
      expect(text, `${id}: ${example}`).not.toMatch(/\bdeg\b|\bum\b|NaN|undefined|object/);
    }
});

it('has the minus of typography, where a plan has a hyphen', () => {
  const tilt = (-4 * Math.PI) / 180;
  expect(KINDS.angle.print(tilt as never)).toBe('-4 deg');
  expect(KINDS.angle.parse('\u22124 deg')).toMatchObject({ ok: true, usual: '-4 deg' });
  expect(metric.stopsSigned(-2.7)).toBe('\u22122.7 stops');
});
