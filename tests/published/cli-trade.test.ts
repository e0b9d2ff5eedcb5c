/** Facts of the trade and published tables, on written plans. */
import { describe, expect, it } from 'vitest';
import type { ChainPart } from '../../shared/optics/parts.ts';
import { unitFocusing } from './support/chains.ts';
import { figuresOfPlan, findingsOfPlan, numberIn } from './support/command-line.ts';
import { plain, type WrittenShot, writtenPlan } from './support/written-plan.ts';

const body: ChainPart = { kind: 'body', flangeMm: 44 };
const twice: ChainPart = { kind: 'converter', factor: 2, lengthMm: 47 };
const lens = { ...unitFocusing(180, 0.5), pupilRatio: 1 };
const daylight = { kind: 'daylight', illuminance: '5000 lx' };

const figuresOf = (shots: Readonly<Record<string, WrittenShot>>, head = {}) =>
  figuresOfPlan(writtenPlan(shots, head));

describe('converters and exposure (common practice)', () => {
  it('a 2x converter makes f/16 work as f/32 and f/32 as f/64: two stops', () => {
    const at = (aperture: string) => ({
      parts: [body, twice, lens],
      fields: { ring: 'infinity', aperture },
    });
    const shots = figuresOf({ sixteen: at('f/16'), 'thirty-two': at('f/32') });
    expect(numberIn(shots.sixteen, 'effectiveFNumber')).toBeCloseTo(32, 9);
    expect(numberIn(shots['thirty-two'], 'effectiveFNumber')).toBeCloseTo(64, 9);
    expect(numberIn(shots.sixteen, 'lightLossStops')).toBeCloseTo(2, 9);
  });

  it('1/100 s at ISO 1600 exposes as 1/50 s at ISO 800', () => {
    const at = (shutter: string, iso: string) => ({
      parts: [body, lens],
      light: daylight,
      fields: { magnification: '0.25x', aperture: 'f/16', shutter, iso },
    });
    const shots = figuresOf({
      short: at('1/100 s', '1600'),
      long: at('1/50 s', '800'),
      'half-shutter': at('180 deg', '800'),
    });
    const long = numberIn(shots.long, 'exposureErrorStops');
    expect(numberIn(shots.short, 'exposureErrorStops')).toBeCloseTo(long, 9);
    // At 25 fps a half-open shutter is 1/50 s.
    expect(numberIn(shots['half-shutter'], 'exposureErrorStops')).toBeCloseTo(long, 9);
    // "Bellows factor": at a quarter life size a lens loses 2·log2(1.25), 0.64 stop.
    const bare = Math.log2(5000 / 2.5) - Math.log2((16 * 16 * 50 * 100) / 800);
    expect(long).toBeCloseTo(bare - 2 * Math.log2(1.25), 9);
  });

  // APEX (ANSI PH2.12): at C 250, EV −1 to 4 at ISO 100 are 1.25, 2.5, 5, 10, 20 and 40 lx.
  it('illuminance of an EV', () => {
    const luxes = [1.25, 2.5, 5, 10, 20, 40];
    const shots = figuresOf(
      Object.fromEntries(
        luxes.map((lux, index) => [
          `ev-${index}`,
          {
            parts: [body, lens],
            light: { kind: 'daylight', illuminance: `${lux} lx` },
            fields: { ring: 'infinity', aperture: 'f/1', shutter: '1 s', iso: '100' },
          },
        ]),
      ),
    );
    const errors = luxes.map((_, index) => numberIn(shots[`ev-${index}`], 'exposureErrorStops'));
    expect(errors).toEqual([-1, 0, 1, 2, 3, 4].map((ev) => expect.closeTo(ev, 9)));
  });
});

describe('safe shutter angles (common practice)', () => {
  const planAt = (mains: string, rate: string, angles: readonly number[]) =>
    writtenPlan(
      Object.fromEntries(
        angles.map((angle, index) => [
          `angle-${index}`,
          {
            parts: [body, lens],
            record: { rate },
            light: { kind: 'fluorescent', supply: 'mains', illuminance: '5000 lx' },
            fields: { ring: 'closest', aperture: 'f/8', iso: 'auto', shutter: `${angle} deg` },
          },
        ]),
      ),
      { mains },
    );

  const safeOf = (mains: string, rate: string, angles: readonly number[]) => {
    const plan = planAt(mains, rate, angles);
    const figures = figuresOfPlan(plan);
    const flickering = new Set(
      findingsOfPlan(plan)
        .filter(({ rule }) => rule === 'lamp-flicker')
        .map(({ shot }) => shot),
    );
    return angles.filter((_, index) => {
      const residual = numberIn(figures[`angle-${index}`], 'flickerResidual');
      // What is safe by the figure has no finding, and what leaves more than 2 % has one.
      expect(flickering.has(`angle-${index}`)).toBe(residual > 0.02);
      return residual < 1e-9;
    });
  };

  it('25 fps at 60 Hz: 75, 150, 225 and 300°, of all multiples of 3°', () => {
    const threes = Array.from({ length: 120 }, (_, index) => 3 * (index + 1));
    expect(safeOf('60 Hz', '25 fps', threes)).toEqual([75, 150, 225, 300]);
  });

  it('24 fps at 50 Hz: 172.8°, where 180° is not', () => {
    expect(safeOf('50 Hz', '24 fps', [144, 172.8, 180, 216])).toEqual([172.8]);
  });

  it('a half-open shutter is safe at half the mains frequency', () => {
    expect(safeOf('50 Hz', '25 fps', [180])).toEqual([180]);
    expect(safeOf('60 Hz', '30 fps', [180])).toEqual([180]);
    expect(safeOf('50 Hz', '24 fps', [180])).toEqual([]);
  });
});

describe('diffraction', () => {
  // Common practice: at an effective f/64 a frame of 36 mm is soft but still used at 1920 pixels, and past
  // use at 3840.
  const planFor = (size: string) =>
    writtenPlan(
      {
        stopped: {
          parts: [body, twice, lens],
          record: { resolution: size },
          subject: { kind: 'solid', size: '200 x 150 mm', depth: '0 mm', finish: 'matt' },
          fields: { ring: 'infinity', aperture: 'f/32' },
        },
      },
      { deliver: `{ resolution: ${size}, rate: 25 fps }` },
    );
  const judged = (size: string) => {
    const found = findingsOfPlan(planFor(size));
    return found.filter(({ rule }) => rule === 'diffraction-eats-detail');
  };

  it('f/64 on 36 mm and 1920 pixels: contrast 0.43, a note at most', () => {
    const { stopped } = figuresOfPlan(planFor('1920 x 1080'));
    expect(numberIn(stopped, 'effectiveFNumber')).toBeCloseTo(64, 9);
    expect(numberIn(stopped, 'contrast').toFixed(2)).toBe('0.43');
    expect(judged('1920 x 1080').map(({ severity }) => severity)).toEqual(['note']);
  });

  it('delivered at 3840: contrast 0.02, a warning', () => {
    const { stopped } = figuresOfPlan(planFor('3840 x 2160'));
    expect(numberIn(stopped, 'contrast').toFixed(2)).toBe('0.02');
    expect(judged('3840 x 2160').map(({ severity }) => severity)).toEqual(['warning']);
  });

  // First zero of J1 at 1.2196699·π (Abramowitz and Stegun, table 9.5: 3.83171): f/8 at 0.55 µm, 10.74 µm.
  it('the Airy disk of f/8 is 10.74 µm wide', () => {
    const shots = figuresOf({
      eight: { parts: [body, lens], fields: { ring: 'infinity', aperture: 'f/8' } },
    });
    expect(numberIn(shots.eight, 'airyUm')).toBeCloseTo(10.74, 2);
    expect(numberIn(shots.eight, 'airyUm') / (2 * (3.83171 / Math.PI) * 0.55 * 8)).toBeCloseTo(
      1,
      3,
    );
  });

  /**
   * Optimum f-number for a focus spread, √(375·spread mm) (P. Hansma, "View Camera Focusing in Practice",
   * 1996; from memory). His table writes tenths of a stop as decimals: 22.6 is f/22 and six tenths.
   */
  it('best f-number for a focus spread at the sensor: Hansma’s table, within 0.2 stop', () => {
    const table = { 1: 16.6, 2: 22.6, 3: 32.2, 4: 32.6, 5: 32.9, 6: 45.2, 10: 64.0 };
    const magnification = 0.5;
    const rows = Object.entries(table).map(([spread, f]) => ({ spread: Number(spread), f }));
    const shots = figuresOf(
      Object.fromEntries(
        rows.map(({ spread }) => [
          `spread-${spread}`,
          {
            parts: [body, lens],
            // A depth T at the subject is T·m² at the sensor (longitudinal magnification).
            subject: { kind: 'solid', depth: `${plain(spread / magnification ** 2)} mm` },
            fields: { magnification: `${magnification}x`, aperture: 'f/16' },
          },
        ]),
      ),
    );
    for (const { spread, f } of rows) {
      const marked = 2 * Math.log2(Math.floor(f)) + (f - Math.floor(f));
      const best = numberIn(shots[`spread-${spread}`], 'bestEffectiveFNumber');
      expect(Math.abs(2 * Math.log2(best) - marked), `${spread} mm`).toBeLessThan(0.2);
    }
  });
});
