/**
 * One lamp said in every way gives one exposure, here or there. Expected: a lamp's face of luminance
 * L summed over small pieces (Lambert, Photometria), N²/t = E·S/250 for what it lights and
 * N²/t = R·L·S/12.5 for what shows it (ISO 2720, from memory); a mirror keeps radiance, so that the
 * distance of what it shows doesn't count (e.g. E. Hecht, Optics).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { type SummedFace, summedWeight } from './support/summed-face.ts';

const SUBJECTS = {
  matt: '{ kind: solid, size: 200 x 150 mm, depth: 1.5 mm, finish: matt }',
  film: '{ kind: film, orientation: upright, size: 160 x 100 mm, holder: wicking-frame, lifetime: 40 s }',
  plate: '{ kind: solid, size: 200 x 150 mm, depth: 1.5 mm, finish: mirror, reflectance: 90 % }',
  bubble: '{ kind: bubble, diameter: 60 mm, lifetime: 40 s }',
} as const;

interface Place {
  readonly distance: number;
  readonly upDeg: number;
  readonly acrossDeg: number;
}

interface Lamp {
  readonly luminance: number;
  readonly width: number;
  readonly height: number;
  readonly isRound: boolean;
  readonly here: Place;
  /** Where the shot puts it; undefined: it stays. */
  readonly there: Place | undefined;
  /** Where it stood when it was read, by the reading's own distance. */
  readonly readFrom: number;
  readonly tiltDeg: number;
}

/** The normal of a subject that leans back by so much. */
const normalOf = (tiltDeg: number) =>
  [0, Math.sin((tiltDeg * Math.PI) / 180), Math.cos((tiltDeg * Math.PI) / 180)] as const;

const atText = ({ distance, upDeg, acrossDeg }: Place): string =>
  `{ distance: ${distance} mm, elevation: ${upDeg} deg, azimuth: ${acrossDeg} deg }`;

const decimal = (value: number): string => value.toFixed(9).replace(/\.?0+$/, '');

/** The time at which f/8 and ISO 400 are right for a diffuse subject under E lx, s. */
const rightTime = (lux: number): string => decimal((64 * 250) / (lux * 400));

/** Every way of saying the lamp's brightness, as pairs of the light. */
function ways(
  lamp: Lamp,
  isFlat: boolean,
): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const face: SummedFace = { ...lamp, ...lamp.here };
  const normal = normalOf(isFlat ? lamp.tiltDeg : 0);
  const lux = lamp.luminance * summedWeight(face, normal);
  const farLux = lamp.luminance * summedWeight({ ...face, distance: lamp.readFrom }, normal);
  const reading = (at: number, rest: string) =>
    `{ aperture: f/8, shutter: ${rightTime(at)} s, iso: 400, ${rest} }`;
  // Loss of macro-100 is 0.3 stops; at 0.25x with a pupil ratio of 1 it works as f/10.
  const throughLens = (at: number) => at / 2 ** 0.3;
  return {
    luminance: { luminance: `${decimal(lamp.luminance)} cd/m2` },
    illuminance: { illuminance: `${decimal(lux)} lx` },
    meter: { reading: reading(lux, 'through: meter') },
    'meter, elsewhere': {
      reading: reading(farLux, `through: meter, distance: ${lamp.readFrom} mm`),
    },
    'bare-lens': { reading: reading(throughLens(lux), 'through: bare-lens') },
    'bare lens, close': {
      reading: reading(throughLens(lux) / 1.25 ** 2, 'through: bare-lens, magnification: 0.25x'),
    },
    'bare lens, elsewhere': {
      reading: reading(throughLens(farLux), `through: bare-lens, distance: ${lamp.readFrom} mm`),
    },
  };
}

function planOf(subject: keyof typeof SUBJECTS, lamp: Lamp, way: Readonly<Record<string, string>>) {
  const bright = Object.entries(way).map(([key, text]) => `${key}: ${text}`);
  const face = lamp.isRound
    ? `diameter: ${lamp.width} mm`
    : `emitting-size: ${lamp.width} x ${lamp.height} mm`;
  return changed(EXAMPLE_PLAN, {
    'subjects/frost-plate': SUBJECTS[subject],
    'lights/panel': `{ kind: led, ${face}, at: ${atText(lamp.here)}, modulation: none, supply: low-voltage, ${bright.join(', ')} }`,
    ...(subject === 'bubble' ? {} : { 'shots/frost/tilt': `${lamp.tiltDeg} deg` }),
    ...(lamp.there && { 'shots/frost/relight': `{ panel: { at: ${atText(lamp.there)} } }` }),
  });
}

const figuresOf = (text: string) => coreWith(text).figures(PLAN).get('frost')!;

/** What the exposure is off by, by the laws named above; N_eff and R as they are for every lamp. */
function expectedError(subject: keyof typeof SUBJECTS, lamp: Lamp, text: string): number {
  const { effectiveFNumber, reflectance } = figuresOf(text);
  // The lens takes 0.3 stops.
  const asked = Math.log2(((effectiveFNumber as number) ** 2 * 50) / 1250) + 0.3;
  if (subject !== 'matt')
    return Math.log2(((reflectance as number) * lamp.luminance) / 12.5) - asked;
  const face = { ...lamp, ...(lamp.there ?? lamp.here) };
  const lux = lamp.luminance * summedWeight(face, normalOf(lamp.tiltDeg));
  return Math.log2(lux / 250) - asked;
}

const place: fc.Arbitrary<Place> = fc.record({
  distance: fc.integer({ min: 250, max: 2000 }),
  upDeg: fc.integer({ min: -35, max: 45 }),
  acrossDeg: fc.integer({ min: -40, max: 40 }),
});

const lampOf: fc.Arbitrary<Lamp> = fc
  .record({
    luminance: fc.integer({ min: 200, max: 40_000 }),
    width: fc.integer({ min: 40, max: 500 }),
    height: fc.integer({ min: 40, max: 400 }),
    isRound: fc.boolean(),
    here: place,
    there: fc.option(place, { nil: undefined }),
    readFrom: fc.integer({ min: 250, max: 2000 }),
    tiltDeg: fc.integer({ min: -20, max: 20 }),
  })
  .map((lamp) => (lamp.isRound ? { ...lamp, height: lamp.width } : lamp));

/** A flat mirror shows a lamp only where it looks, at twice the tilt from the lens axis, and large enough. */
function shown(subject: keyof typeof SUBJECTS, lamp: Lamp): Lamp {
  if (subject === 'matt' || subject === 'bubble') return lamp;
  const seen = { upDeg: 2 * lamp.tiltDeg, acrossDeg: 0 };
  const [width, height] = [Math.max(lamp.width, 200), Math.max(lamp.height, 200)];
  const near = (at: Place): Place => ({ ...seen, distance: Math.min(at.distance, 900) });
  return lamp.there
    ? { ...lamp, width, height, there: near(lamp.there) }
    : { ...lamp, width, height, here: near(lamp.here) };
}

// The face summed piece by piece, by brute force; meter constants as in ISO 2720, from memory.
describe('one lamp, said in every way', () => {
  it.each(Object.keys(SUBJECTS) as (keyof typeof SUBJECTS)[])(
    'gives one exposure of a %s, here and where the shot puts it',
    (subject) => {
      fc.assert(
        fc.property(lampOf, (anywhere) => {
          const lamp = shown(subject, anywhere);
          let expected: number | undefined;
          for (const [name, way] of Object.entries(ways(lamp, subject !== 'bubble'))) {
            const text = planOf(subject, lamp, way);
            const { exposureErrorStops: error, notKnown } = figuresOf(text);
            expect(notKnown.exposureErrorStops, name).toBeUndefined();
            expected ??= expectedError(subject, lamp, text);
            expect(Math.abs((error as number) - expected), name).toBeLessThan(1e-3);
          }
        }),
        { numRuns: manyRuns(12) },
      );
    },
    3_600_000,
  );

  it('of 18,000 lx at 1 m that is moved to 350 mm lights no mirror less, and a matt plate more', () => {
    const lamp: Lamp = {
      luminance: 60_000,
      width: 600,
      height: 600,
      isRound: false,
      here: { distance: 1000, upDeg: 8, acrossDeg: 0 },
      there: { distance: 350, upDeg: 8, acrossDeg: 0 },
      readFrom: 1000,
      tiltDeg: 4,
    };
    const error = (subject: keyof typeof SUBJECTS, there: Place | undefined) =>
      figuresOf(planOf(subject, { ...lamp, there }, { illuminance: '18000 lx' }))
        .exposureErrorStops as number;
    expect(error('film', lamp.there)).toBeCloseTo(error('film', undefined), 9);
    const [near, far] = [lamp.there!, lamp.here].map((at) =>
      summedWeight({ ...lamp, ...at }, normalOf(lamp.tiltDeg)),
    );
    expect(error('matt', lamp.there) - error('matt', undefined)).toBeCloseTo(
      Math.log2(near! / far!),
      3,
    );
  });
});
