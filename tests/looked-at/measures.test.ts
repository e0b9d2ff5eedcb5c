/** The measures themselves, against what is known of them without a picture. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EdgeMeter, narrowestEdgePx } from '../../shared/looked-at/edges.ts';
import { FlickerMeter, foldedCycles } from '../../shared/looked-at/flicker.ts';
import { greyCardStops } from '../../shared/looked-at/grey-card.ts';
import { driftBetween } from '../../shared/looked-at/judge.ts';
import { colourLight, LIGHT } from '../../shared/looked-at/light.ts';
import type { LookedAt } from '../../shared/looked-at/looked.ts';
import { repeatsIn } from '../../shared/looked-at/repeats.ts';
import { SoundMeter } from '../../shared/looked-at/sound.ts';
import { apertureHalfContrast, halfContrastOf } from '../../shared/looked-at/spectrum.ts';

const LOOKED: LookedAt = {
  frames: 100,
  clipped: 0,
  crushed: 0,
  flicker: [],
  repeats: [],
  edgePx: null,
  halfContrast: null,
  light: [0.18, 0.18, 0.18],
  middle: { light: 0.18, isEven: true },
  sound: null,
};

describe('light of a code', () => {
  // ITU-R BT.709-6, 1.2: V = 1.099·L^0.45 − 0.099; D' = 219·V + 16.
  it.each([0.02, 0.18, 0.5, 1])('%s of white', (light) => {
    const code = Math.round(219 * (1.099 * light ** 0.45 - 0.099) + 16);
    expect(LIGHT[code]).toBeCloseTo(light, 2);
  });

  it('of grey is that of its brightness, in each colour', () => {
    for (const one of colourLight(106, 128, 128)) expect(one).toBeCloseTo(LIGHT[106]!, 10);
  });

  it('of full red has no green and no blue', () => {
    // ITU-R BT.709-6, table 3: Y of red is 0.2126, Cr 0.5.
    const [red, green, blue] = colourLight(16 + 219 * 0.2126, 128 - (224 * 0.2126) / 1.8556, 240);
    expect(red).toBeCloseTo(1, 2);
    expect(Math.max(green, blue)).toBeLessThan(0.01);
  });
});

describe('flicker', () => {
  // Common practice: 100 Hz at 24 fps beats 4 times a second, at 25 and 50 fps it stands still.
  it.each([
    [100, 24, 4],
    [100, 25, 0],
    [100, 50, 0],
    [120, 25, 5],
    [100, 30, 10],
    [100, 60, 20],
  ])('of %s Hz at %s fps shows %s times a second', (lamp, fps, shown) => {
    expect(foldedCycles(lamp, fps) * fps).toBeCloseTo(shown, 10);
  });

  it('of a known depth is measured, whatever its phase', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (depth, phase) => {
          const meter = new FlickerMeter([100], 30, 4);
          for (let frame = 0; frame < 64; frame++)
            meter.add(
              Float64Array.from(
                { length: 4 },
                (_, line) =>
                  0.3 * (1 + depth * Math.sin((2 * Math.PI * 100 * frame) / 30 + phase + line)),
              ),
            );
          expect(Math.abs(meter.seen[0]!.depth! / depth - 1)).toBeLessThan(0.01);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('is not known of a short clip, or where it stands still', () => {
    const short = new FlickerMeter([100], 30, 1);
    short.add(Float64Array.of(0.3));
    expect(short.seen).toEqual([{ lampHz: 100, depth: null, floor: 0 }]);
  });
});

describe('the narrowest edge', () => {
  it('of a wide aperture is one pixel: Parseval’s ∫ sinc² = 1', () => {
    expect(narrowestEdgePx(0.5, 50)).toBeCloseTo(1, 1);
  });

  it('of a narrow one is 3π/8 over the cut-off in cycles a pixel', () => {
    // ∫ of the pupil's transfer from 0 to its cut-off is 4/(3π) of it (Goodman, by integration).
    const [fNumber, pixelUm] = [90, 2];
    const cutOff = pixelUm / (0.55 * fNumber);
    expect(narrowestEdgePx(fNumber, pixelUm) / ((3 * Math.PI) / (8 * cutOff))).toBeCloseTo(1, 1);
  });

  it('is measured of ramps of known width', () => {
    for (const width of [1, 4, 10]) {
      const meter = new EdgeMeter();
      const line = Uint8Array.from({ length: 200 }, (_, x) =>
        Math.round(50 + 150 * Math.min(1, Math.max(0, ((x % 50) - 20) / width))),
      );
      const grey = new Uint8Array(200 * 200);
      for (let y = 0; y < 200; y++) grey.set(line, y * 200);
      meter.add(grey, 200, 200);
      // Half of all edges are the steps back, of one pixel.
      expect(meter.widthPx).toBeLessThanOrEqual(width);
    }
  });
});

describe('the pattern that keeps half of its contrast', () => {
  const edge = (shape: (x: number) => number): Uint8Array =>
    Uint8Array.from({ length: 121 }, (_, x) => Math.round(20 + 200 * shape(x - 60)));

  it('of a spread over n pixels is where sin(πnf)/(n·sin πf) is a half', () => {
    // The Dirichlet kernel, over the response of a difference (ISO 12233, D.3).
    for (const n of [3, 5, 11, 21]) {
      const grey = edge((x) => Math.min(1, Math.max(0, x / n)));
      const half = halfContrastOf(grey, 0, 1, 120);
      const left = Math.sin(Math.PI * n * half) / (n * Math.sin(Math.PI * half));
      expect(left / (Math.sin(Math.PI * half) / (Math.PI * half))).toBeCloseTo(0.5, 1);
    }
  });

  it('of a bell of standard deviation s is √(2·ln 2)/(2π·s)', () => {
    // The Fourier transform of a Gaussian (J. W. Goodman, Introduction to Fourier Optics).
    for (const s of [2, 4, 8]) {
      const bell = (x: number): number => 1 / (1 + Math.exp((-1.702 * x) / s));
      const half = halfContrastOf(edge(bell), 0, 1, 120);
      expect((half * 2 * Math.PI * s) / Math.sqrt(2 * Math.LN2)).toBeCloseTo(1, 1);
    }
  });

  it('behind a narrow aperture is 0.404 of its cut-off', () => {
    // Tables of the diffraction-limited transfer of a round pupil (Goodman): 0.5 at 0.404.
    const [fNumber, pixelUm] = [90, 2];
    expect(apertureHalfContrast(fNumber, pixelUm) / (pixelUm / (0.55 * fNumber))).toBeCloseTo(
      0.404,
      2,
    );
  });

  it('is low of a slope with a single step in it, as a coder leaves one', () => {
    // The transform of a sum is the sum of the transforms: a quarter stays, the rest is the ramp's.
    const stepped = (x: number): number =>
      0.75 * Math.min(1, Math.max(0, (x + 10) / 20)) + (x > 0 ? 0.25 : 0);
    const half = halfContrastOf(edge(stepped), 0, 1, 120);
    const ramp = Math.sin(Math.PI * 20 * half) / (20 * Math.sin(Math.PI * half));
    expect(0.75 * ramp + 0.25).toBeCloseTo(0.5, 1);
    expect(half).toBeLessThan(0.045);
  });

  it('is what the sharpest edges of a picture keep, in either direction', () => {
    const meter = new EdgeMeter();
    const line = Uint8Array.from(
      { length: 200 },
      (_, x) => 50 + 15 * Math.abs(((x + 10) % 20) - 10),
    );
    const grey = new Uint8Array(200 * 200);
    for (let y = 0; y < 200; y++) grey.set(line, y * 200);
    meter.add(grey, 200, 200);
    // Ramps of 10 px: the kernel above is a half at 0.0605.
    expect(meter.halfContrast).toBeCloseTo(0.06, 2);
  });
});

describe('repeats', () => {
  it('are found where they are, and nowhere else', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 3, noNaN: true }), { minLength: 60, maxLength: 120 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 12 }),
        (differences, at, count) => {
          expect(repeatsIn(differences)).toEqual([]);
          const frozen = differences.map((one, index) =>
            index >= at && index < at + count ? 0 : one,
          );
          expect(repeatsIn(frozen)).toEqual([{ frame: at + 1, count }]);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('of a scene at rest are none: its noise is as large as ever', () => {
    expect(repeatsIn(Array.from({ length: 80 }, (_, index) => 0.4 + (index % 3) * 0.05))).toEqual(
      [],
    );
  });

  it('of a clip that never moves are all of it', () => {
    expect(repeatsIn(new Float64Array(49))).toEqual([{ frame: 1, count: 49 }]);
  });
});

describe('sound', () => {
  it('by its level: a sine at full scale has an RMS of −3.01 dB (AES17)', () => {
    const meter = new SoundMeter();
    meter.add(Int16Array.from({ length: 48000 }, (_, at) => 32000 * Math.sin(at / 7)));
    expect(meter.heard!.rmsDb! - meter.heard!.peakDb!).toBeCloseTo(-3.01, 1);
    expect(meter.heard!.clipped).toBe(0);
  });
});

describe('a grey card', () => {
  it.each([
    [0.18, 0, 0],
    [0.09, 0, -1],
    [0.36, 0.5, 0.5],
  ])('of light %s, where the plan expects %s stops', (light, planned, found) => {
    const looked = { ...LOOKED, middle: { light, isEven: true } };
    expect(greyCardStops(looked, planned)).toBeCloseTo(found, 10);
  });

  it('is none where the middle is not even', () => {
    expect(greyCardStops({ ...LOOKED, middle: { light: 0.18, isEven: false } }, 0)).toBeNull();
  });
});

describe('drift', () => {
  it('is told in stops from a third on', () => {
    const [half, near] = [0.5, 0.9].map((by) => ({
      ...LOOKED,
      light: [0.18 * by, 0.18 * by, 0.18 * by] as const,
    }));
    expect(driftBetween(LOOKED, half!)?.stops).toBeCloseTo(-1, 6);
    expect(driftBetween(LOOKED, near!)).toBeNull();
  });

  it('of colour counts by itself', () => {
    const warm = { ...LOOKED, light: [0.21, 0.18, 0.16] as const };
    expect(driftBetween(LOOKED, warm)).toMatchObject({ red: Math.log2(0.21 / 0.18) });
  });
});
