/** Pixels of eleven sets against many rays each, followed by code that shares nothing with the tracer. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import {
  type BruteSet,
  type Finish,
  pixelOf,
  randomBy,
  type SetLight,
} from './support/brute-force.ts';
import { laidOut, luminanceAt, traced } from './support/traced.ts';

const SIZE = { width: 160, height: 90 };
const RAYS = 100;
const PIXELS = 28;

/** Numbers of the plan that a set is built from: the example's strip and panel. */
const STRIP: SetLight = {
  distance: 300,
  up: 14,
  across: 0,
  width: 240,
  height: 120,
  level: 12000,
  kelvin: 5600,
};
const READ_PANEL: SetLight = {
  distance: 400,
  up: 40,
  across: 0,
  width: 300,
  height: 200,
  level: 0,
  kelvin: 5600,
};

type Plane = Extract<BruteSet['subject'], { is: 'plane' }>;
const plane = (tilt: number, more: Partial<Plane> = {}): Plane => ({
  is: 'plane',
  kelvin: 5600,
  tilt,
  about: 'level',
  bowRadius: 0,
  width: 160,
  height: 100,
  ...more,
});

interface Case {
  readonly name: string;
  readonly shot: 'skin' | 'frost';
  readonly change: Readonly<Record<string, string>>;
  readonly subject: BruteSet['subject'] | ((focusBehind: number) => BruteSet['subject']);
  readonly finish: Finish;
  readonly lights: readonly SetLight[];
  readonly background?: number;
}

const soap = (more: string) => `{ kind: film, orientation: upright, size: 160 x 100 mm, ${more} }`;
const film = (from: number, to: number): Finish => ({ is: 'film', from, to, over: 100 });
const bubble = (more: string) => `{ kind: bubble, diameter: 40 mm, ${more} }`;
const plate = (more: string) => `{ kind: solid, size: 200 x 150 mm, depth: 1 mm, ${more} }`;

const CASES: readonly Case[] = [
  {
    name: 'an upright film full of light',
    shot: 'skin',
    change: { 'subjects/soap': soap('thickness: 100 to 900 nm'), 'shots/skin/tilt': '7 deg' },
    subject: plane(7),
    finish: film(100, 900),
    lights: [STRIP],
  },
  {
    name: 'oil on water that the light covers in part',
    shot: 'skin',
    change: {
      'subjects/soap':
        '{ kind: surface, finish: mirror, size: 160 x 100 mm, depth: 1 mm, film: { refractive-index: 1.47, thickness: 100 to 700 nm }, background-luminance: 200 cd/m2 }',
      'shots/skin/tilt': '12 deg',
    },
    subject: plane(12),
    finish: { is: 'film', from: 100, to: 700, over: 100, onWater: 1.47 },
    lights: [STRIP],
    background: 200,
  },
  {
    name: 'a crystal between crossed polarisers, lit from behind in part',
    shot: 'skin',
    change: {
      'kit/filters': '{ pol: { kind: polariser, loss: 1.6 stops } }',
      'shots/skin/filters': '[pol]',
      'subjects/soap':
        '{ kind: solid, finish: matt, size: 40 x 24 mm, depth: 1 mm, transmittance: 80 %, birefringence: 0.009, thickness: 20 to 150 um, background-luminance: 10 cd/m2 }',
      'shots/skin/tilt': '10 deg',
      'lights/strip/polarised': 'crossed',
      'lights/strip/at': '{ distance: 60 mm, azimuth: 173 deg, elevation: 4 deg }',
      'lights/strip/emitting-size': '40 x 30 mm',
    },
    subject: plane(10, { width: 40, height: 24 }),
    finish: { is: 'crystal', clear: 0.8, from: 180, to: 1350, over: 24 },
    // The polariser's own loss is that of unpolarised light; the sheet's light loses no half of it.
    lights: [{ ...STRIP, distance: 60, up: 4, across: 173, width: 40, height: 30, level: 24_000 }],
    background: 10,
  },
  {
    name: 'a film that shows the lens before the light',
    shot: 'skin',
    change: {
      'subjects/soap': soap('thickness: 300 nm'),
      'shots/skin/tilt': '1 deg',
      'lights/strip/at': '{ distance: 900 mm, elevation: 3 deg }',
      'lights/strip/emitting-size': '600 x 400 mm',
    },
    subject: plane(1),
    finish: film(300, 300),
    lights: [{ ...STRIP, distance: 900, up: 3, width: 600, height: 400 }],
  },
  {
    name: 'a film turned sideways, its edge in the frame and a light in the way',
    shot: 'skin',
    change: {
      'subjects/soap':
        '{ kind: film, orientation: upright, size: 30 x 20 mm, thickness: 200 to 600 nm, background-luminance: 300 cd/m2 }',
      'shots/skin/tilt': '10 deg',
      'shots/skin/tilt-axis': 'upright',
      'lights/strip/at': '{ distance: 300 mm, azimuth: 22 deg }',
    },
    subject: plane(10, { about: 'upright', width: 30, height: 20 }),
    finish: { is: 'film', from: 200, to: 600, over: 20 },
    lights: [{ ...STRIP, up: 0, across: 22 }],
    background: 300,
  },
  {
    name: 'a film that bows toward the lens',
    shot: 'skin',
    change: {
      'subjects/soap': soap('thickness: 100 to 500 nm, sag: 2 mm'),
      'shots/skin/tilt': '8 deg',
    },
    // The circle through the middle and both ends: (L² + 4b²)/(8b).
    subject: plane(8, { bowRadius: (100 ** 2 + 4 * 2 ** 2) / (8 * 2) }),
    finish: film(100, 500),
    lights: [STRIP],
  },
  {
    name: 'a bubble under a softbox',
    shot: 'skin',
    change: {
      'subjects/soap': bubble('thickness: 150 to 500 nm'),
      'lights/strip/at': '{ distance: 300 mm, elevation: 50 deg, azimuth: -20 deg }',
    },
    subject: (focusBehind) => ({ is: 'bubble', kelvin: 5600, radius: 20, focusBehind }),
    finish: { is: 'film', from: 150, to: 500, over: 40 },
    lights: [{ ...STRIP, up: 50, across: -20 }],
  },
  {
    name: 'a bubble of one thickness before a lit background',
    shot: 'skin',
    change: {
      'subjects/soap': bubble('thickness: 120 nm, background-luminance: 100 cd/m2'),
      'lights/strip/at': '{ distance: 200 mm, elevation: 20 deg, azimuth: 60 deg }',
      'shots/skin/white-balance': '4300 K',
    },
    subject: (focusBehind) => ({ is: 'bubble', kelvin: 4300, radius: 20, focusBehind }),
    finish: { is: 'film', from: 120, to: 120, over: 40 },
    lights: [{ ...STRIP, distance: 200, up: 20, across: 60 }],
    background: 100,
  },
  {
    name: 'polished metal under a round lamp',
    shot: 'skin',
    change: {
      'subjects/soap': plate('finish: mirror, reflectance: 60 %'),
      'shots/skin/tilt': '9 deg',
      'lights/strip':
        '{ kind: led, diameter: 90 mm, at: { distance: 250 mm, elevation: 20 deg, azimuth: 4 deg }, colour-temperature: 5600 K, luminance: 900 cd/m2 }',
    },
    subject: plane(9, { width: 200, height: 150 }),
    finish: { is: 'mirror', share: 0.6 },
    lights: [{ ...STRIP, distance: 250, up: 20, across: 4, width: 90, height: 0, level: 900 }],
  },
  {
    name: 'a matt plate close under a panel',
    shot: 'frost',
    change: {
      'shots/frost/tilt': '20 deg',
      'lights/panel/at': '{ distance: 150 mm, elevation: 40 deg }',
    },
    subject: plane(20, { width: 200, height: 150 }),
    finish: { is: 'matt' },
    lights: [{ ...READ_PANEL, distance: 150 }],
  },
  {
    name: 'a glossy plate that shows its panel',
    shot: 'frost',
    change: {
      'subjects/frost-plate': plate('finish: gloss, refractive-index: 1.5'),
      'shots/frost/tilt': '20 deg',
    },
    subject: plane(20, { width: 200, height: 150 }),
    finish: { is: 'gloss', index: 1.5, faces: [] },
    lights: [READ_PANEL],
  },
];

describe('pixels are what many rays through them see', () => {
  it.each(CASES)('of $name', (one) => {
    const shot = laidOut(changed(EXAMPLE_PLAN, one.change), one.shot)!;
    const { picture } = traced(shot, SIZE)!;
    const set = setOf(one, shot);
    const random = randomBy(one.name.length);
    let [traceSum, bruteSum, deviations] = [0, 0, 0];
    for (let i = 0; i < manyRuns(PIXELS); i += 1) {
      const [column, row] = [Math.floor(random() * SIZE.width), Math.floor(random() * SIZE.height)];
      const place = (c: number, r: number) =>
        [((c + 0.5) / SIZE.width) * 2 - 1, 1 - ((r + 0.5) / SIZE.height) * 2] as const;
      const half = [1 / SIZE.width, 1 / SIZE.height] as const;
      const { mean, deviation } = pixelOf(set, place(column, row), half, RAYS, random);
      const drawn = luminanceAt(picture, row * SIZE.width + column);
      // Rays of the tracer, and those of the brute force.
      const error = deviation * Math.sqrt(1 / 5 + 1 / RAYS);
      traceSum += drawn;
      bruteSum += mean;
      deviations += error * error;
      if (Math.abs(drawn - mean) <= 0.02 * mean + 3 * error) continue;
      // An edge may lie a pixel off: the pixel is between the darkest and the brightest around it.
      const around = [-1, 0, 1].flatMap((dr) =>
        [-1, 0, 1].map((dc) => pixelOf(set, place(column + dc, row + dr), half, RAYS, random).mean),
      );
      expect(drawn, `${column}, ${row}`).toBeGreaterThanOrEqual(0.98 * Math.min(...around));
      expect(drawn, `${column}, ${row}`).toBeLessThanOrEqual(1.02 * Math.max(...around));
    }
    expect(bruteSum).toBeGreaterThan(0);
    expect(Math.abs(traceSum - bruteSum)).toBeLessThan(0.01 * bruteSum + 3 * Math.sqrt(deviations));
  });
});

/** Camera by the shot's figures, light by its settings: L·t·S/(K·N²) is mid-grey (ISO 2720, K 12.5). */
function setOf(one: Case, { figures, bench }: NonNullable<ReturnType<typeof laidOut>>): BruteSet {
  const given = <T>(figure: { known: true; value: T } | { known: false }): T => {
    if (!figure.known) throw new Error(`${one.name} has no such figure`);
    return figure.value;
  };
  const [width, height] = given(figures.fieldMm);
  const seconds = given(figures.shutterSeconds);
  const speed = given(bench.iso) as number;
  const stops = given(figures.effectiveFNumber) ** 2 * 2 ** given(figures.glassLossStops);
  const perUnit = (0.18 * seconds * speed) / (12.5 * stops);
  // The panel was read at f/8, 1/50 s, ISO 400 on a matt subject; C 250 makes lx of it.
  const read = (0.18 * (64 * 50 * seconds * speed)) / 400 / stops;
  const isLit = one.finish.is === 'matt' || one.finish.is === 'gloss';
  const room = given(figures.workingDistanceMm);
  return {
    camera: {
      width,
      height,
      pupilAt: given(figures.trace).pupilDistanceMm!,
      pupil: given(figures.pupilDiameterMm),
      room,
      front: isLit ? 0 : 82,
    },
    subject:
      typeof one.subject === 'function'
        ? one.subject(given(figures.focusBehindNearestMm))
        : one.subject,
    finish:
      one.finish.is === 'gloss'
        ? { ...one.finish, faces: one.lights.map((light) => perUnit * luminanceOfRead(light, one)) }
        : one.finish,
    lights: one.lights.map((light) => ({ ...light, level: isLit ? read : light.level * perUnit })),
    background: (one.background ?? 0) * perUnit,
  };
}

/** Luminance of the panel's face that gives 2^EV·C/100 lx to the middle of the plate (ISO 2720). */
function luminanceOfRead(light: SetLight, one: Case): number {
  const lux = ((64 * 50) / 4) * 2.5;
  const { tilt } = one.subject as Plane;
  const t = (tilt * Math.PI) / 180;
  return lux / solidAngle(light, [0, Math.sin(t), Math.cos(t)]);
}

/** Projected solid angle of a face from the subject's middle, by patches. */
function solidAngle(light: SetLight, normal: readonly [number, number, number]): number {
  const up = (light.up * Math.PI) / 180;
  const patches = 100;
  let sum = 0;
  for (let i = 0; i < patches; i += 1)
    for (let j = 0; j < patches; j += 1) {
      const x = ((i + 0.5) / patches - 0.5) * light.width;
      const v = ((j + 0.5) / patches - 0.5) * light.height;
      const y = light.distance * Math.sin(up) + v * Math.cos(up);
      const z = light.distance * Math.cos(up) - v * Math.sin(up);
      const square = x * x + y * y + z * z;
      const cosines = (normal[1] * y + normal[2] * z) * light.distance;
      sum += Math.max(0, cosines) / square ** 2;
    }
  return (sum * light.width * light.height) / patches ** 2;
}
