/** The optical chain, on written plans. */
import { describe, expect, it } from 'vitest';
import type { ChainPart, LensPart } from '../../shared/optics/parts.ts';
import { unitFocusing } from './support/chains.ts';
import { figuresOfPlan, numberIn } from './support/command-line.ts';
import { randomFrom } from './support/random.ts';
import { type WrittenShot, writtenPlan } from './support/written-plan.ts';

const body: ChainPart = { kind: 'body', flangeMm: 44 };
const tube = (lengthMm: number): ChainPart => ({ kind: 'tube', lengthMm });
const twice: ChainPart = { kind: 'converter', factor: 2, lengthMm: 53 };

const figuresOf = (shots: Readonly<Record<string, WrittenShot>>) =>
  figuresOfPlan(writtenPlan(shots));

describe('closed forms of a lens at infinity with tubes and a converter', () => {
  // Thin-lens equation: a tube E behind a lens at infinity gives m = E/f; a converter of factor M
  // enlarges what is ahead of it M times, and moves the image of what is behind it: E/(M·f).
  const lens = unitFocusing(200, 0.3);
  const fields = { ring: 'infinity', aperture: 'f/8' };

  it('f 200, E 68, M 2: 0.170 with the tubes behind the converter, 0.680 ahead of it', () => {
    const shots = figuresOf({
      behind: { parts: [body, tube(68), twice, lens], fields },
      ahead: { parts: [body, twice, tube(68), lens], fields },
      'three-tubes': { parts: [body, twice, tube(36), tube(20), tube(12), lens], fields },
    });
    expect(numberIn(shots.behind, 'magnification')).toBeCloseTo(0.17, 9);
    expect(numberIn(shots.ahead, 'magnification')).toBeCloseTo(0.68, 9);
    expect(numberIn(shots['three-tubes'], 'magnification')).toBeCloseTo(0.68, 9);
    // N_eff/N = (1 + m1/p)·M with m1 = E/f and p 1.
    expect(numberIn(shots.ahead, 'effectiveFNumber')).toBeCloseTo(8 * (1 + 68 / 200) * 2, 9);
  });

  it('any focal length, tube, factor and length', () => {
    const random = randomFrom(4711);
    const drawn = Array.from({ length: 120 }, () => ({
      focal: random.whole(20, 400),
      extension: random.whole(5, 150),
      factor: random.whole(12, 26) / 10,
      lengthMm: random.whole(15, 80),
    }));
    const shots: Record<string, WrittenShot> = {};
    for (const [index, { focal, extension, factor, lengthMm }] of drawn.entries()) {
      const converter: ChainPart = { kind: 'converter', factor, lengthMm };
      const with_ = (parts: ChainPart[]) => ({
        parts: [body, ...parts, unitFocusing(focal, 1)],
        fields,
      });
      shots[`behind-${index}`] = with_([tube(extension), converter]);
      shots[`ahead-${index}`] = with_([converter, tube(extension)]);
      shots[`bare-${index}`] = with_([tube(extension)]);
    }
    const figures = figuresOf(shots);
    for (const [index, { focal, extension, factor }] of drawn.entries()) {
      const m = (which: string) => numberIn(figures[`${which}-${index}`], 'magnification');
      const tubeOnly = extension / focal;
      expect(m('bare') / tubeOnly).toBeCloseTo(1, 9);
      expect(m('ahead') / (tubeOnly * factor)).toBeCloseTo(1, 9);
      expect(m('behind') / (tubeOnly / factor)).toBeCloseTo(1, 9);
      const bare = numberIn(figures[`bare-${index}`], 'effectiveFNumber');
      expect(bare).toBeCloseTo(8 * (1 + tubeOnly), 8);
      const lost = numberIn(figures[`bare-${index}`], 'lightLossStops');
      expect(lost).toBeCloseTo(2 * Math.log2(1 + tubeOnly), 8);
    }
  });

  it('a close-up of P dioptres: m = f·P/1000 at 1000/P mm from the rim, without loss of light', () => {
    const powers = [1, 2, 3.5, 10];
    const shots = figuresOf(
      Object.fromEntries(
        powers.map((powerDpt, index) => [
          `close-up-${index}`,
          {
            parts: [
              body,
              { ...lens, lengthMm: 165, pupilRatio: 0.8 },
              { kind: 'close-up', powerDpt },
            ],
            fields,
          },
        ]),
      ),
    );
    for (const [index, power] of powers.entries()) {
      const figures = shots[`close-up-${index}`];
      expect(numberIn(figures, 'magnification')).toBeCloseTo((200 * power) / 1000, 9);
      expect(numberIn(figures, 'workingDistanceMm')).toBeCloseTo(1000 / power, 7);
      expect(numberIn(figures, 'effectiveFNumber')).toBeCloseTo(8, 9);
      expect(numberIn(figures, 'lightLossStops')).toBeCloseTo(0, 9);
    }
  });
});

// Thin-lens equation, part by part; J. W. Goodman for the contrast.
describe('a lens that breathes, with a converter and tubes: by hand', () => {
  const focal = 200;
  const closest = { fromSensorMm: 850, magnification: 0.3 };
  const lens: LensPart = {
    kind: 'lens',
    focalMm: focal,
    closest,
    lengthMm: 165,
    pupilRatio: 0.8,
  };
  const parts: ChainPart[] = [body, twice, tube(36), tube(20), tube(12), lens];
  const shots = figuresOfPlan(
    writtenPlan(
      {
        drift: {
          parts,
          subject: { kind: 'film', orientation: 'upright', size: '160 x 100 mm' },
          fields: { field: '24 mm', tilt: '4 deg', aperture: 'f/16' },
        },
        reach: { parts, fields: { ring: 'closest', aperture: 'f/16' } },
      },
      { 'circle-of-confusion': '0.028 mm', deliver: '{ resolution: 1920 x 1080, rate: 25 fps }' },
    ),
  );
  const { drift, reach } = shots;

  // 36 mm of sensor for 24 mm of subject: m = 1.5, of which the converter makes half.
  const m1 = 0.75;
  // f falls evenly from 200 mm to f_c = D/(2 + m + 1/m); m1 = m0 + 68/f, by successive approximation.
  const atClosest = closest.fromSensorMm / (2 + 0.3 + 1 / 0.3);
  const focalAt = (m0: number) => focal - ((focal - atClosest) * m0) / 0.3;
  let m0 = 0.3;
  for (let step = 0; step < 200; step++) m0 = m1 - 68 / focalAt(m0);

  it('magnifications and reach', () => {
    expect(numberIn(drift, 'magnification')).toBeCloseTo(1.5, 9);
    expect(numberIn(drift, 'lensMagnification')).toBeCloseTo(m1, 9);
    expect(numberIn(drift, 'ringMagnification')).toBeCloseTo(m0, 9);
    expect(drift?.reach).toEqual([
      expect.closeTo(0.68, 9),
      expect.closeTo(2 * (0.3 + 68 / atClosest), 9),
    ]);
    expect(numberIn(reach, 'magnification')).toBeCloseTo(2 * (0.3 + 68 / atClosest), 9);
    expect(drift?.fieldMm).toEqual([expect.closeTo(24, 9), expect.closeTo(13.5, 9)]);
  });

  it('f/16 works as f/62: N·(1 + m1/p)·M', () => {
    expect(numberIn(drift, 'effectiveFNumber')).toBeCloseTo(16 * (1 + m1 / 0.8) * 2, 8);
    expect(numberIn(drift, 'effectiveFNumber').toFixed(0)).toBe('62');
    expect(numberIn(drift, 'lightLossStops')).toBeCloseTo(2 * Math.log2(62 / 16), 8);
    const losses = drift?.lossByPart as unknown as { part: string; stops: number }[];
    const sum = losses.reduce((total, { stops }) => total + stops, 0);
    expect(sum).toBeCloseTo(2 * Math.log2(62 / 16), 8);
  });

  it('depth there: 2·c·N_eff/m², 1.5 mm; needed 13.5 mm·tan 4°, 0.94 mm', () => {
    const approximate = (2 * 0.028 * 62) / 1.5 ** 2;
    expect(numberIn(drift, 'depthMm.total') / approximate).toBeCloseTo(1, 3);
    expect(numberIn(drift, 'depthMm.total').toFixed(1)).toBe('1.5');
    expect(numberIn(drift, 'depthMm.needed')).toBeCloseTo(13.5 * Math.tan(Math.PI / 45), 9);
  });

  it('room: subject to rim by the thin-lens distances', () => {
    // Subject f(1 + 1/m1) ahead of the principal plane, that f(1 + m0) ahead of the lens's datum, the rim
    // flange and barrel ahead of the datum.
    const f = focalAt(m0);
    const room = f * (1 + 1 / m1) + f * (1 + m0) - 44 - 165;
    expect(numberIn(drift, 'workingDistanceMm')).toBeCloseTo(room, 7);
    const rig = 44 + 53 + 68 + 165;
    expect(numberIn(drift, 'subjectToSensorMm')).toBeCloseTo(room + rig, 7);
    expect(numberIn(drift, 'pupilDiameterMm')).toBeCloseTo(f / 16, 8);
  });

  it('Airy disk, pixel, and contrast by the overlap of two pupils', () => {
    expect(numberIn(drift, 'airyUm')).toBeCloseTo(2.44 * 0.55 * 62, 8);
    expect(numberIn(drift, 'pixelUm')).toBeCloseTo(18.75, 9);
    // The transfer function of a lens without faults is the shared area of two pupils, shifted by
    // v·λ·N_eff of their diameter (Goodman, Introduction to Fourier Optics); here counted in strips.
    const overlapAt = (perMm: number) => {
      const shift = perMm * 0.55e-3 * 62;
      const strips = 200_000;
      let area = 0;
      for (let i = 0; i < strips; i++) {
        const x = shift + ((i + 0.5) / strips) * (1 - shift);
        area += (2 * Math.sqrt(1 - x * x) * (1 - shift)) / strips;
      }
      return (2 * area) / Math.PI;
    };
    expect(numberIn(drift, 'contrast')).toBeCloseTo(overlapAt(1000 / 18.75 / 4), 5);
    expect(numberIn(drift, 'contrastAtNyquist')).toBeCloseTo(overlapAt(1000 / 18.75 / 2), 5);
  });
});
