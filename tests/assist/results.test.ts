/** What hovers say a value goes into is what moves when the value is changed. */
import { describe, expect, it } from 'vitest';
import { GOES_INTO, RESULTS, type Result } from '../../shared/assist/hover/results.ts';
import type { ShotFiguresJson } from '../../shared/figures/json.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const BENCH = `shootplan: 1
deliver: { resolution: 2560 x 1440 }
mains: 50 Hz
circle-of-confusion: 0.03 mm
kit:
  bodies:
    body-a:
      flange-distance: 44 mm
      recording-modes:
        full: { resolution: 1920 x 1080, rate: 50 fps, area: 36 x 20.25 mm }
  lenses:
    long-200:
      focal-length: 200 mm
      loss: 0.3 stops
      closest: { from-sensor: 0.85 m, magnification: 0.3x }
      length: 165 mm
      extends: 20 mm
      pupil-ratio: 0.8
  tubes:
    tube-36: { length: 36 mm }
  converters:
    twice: { factor: 2x, length: 53 mm, loss: 0.1 stops }
  close-up-lenses:
    plus-2: { power: 2 dpt, loss: 0.1 stops, length: 8 mm }
  filters:
    grey: { loss: 1.5 stops, length: 6 mm }
rigs:
  stack: { parts: [body-a, tube-36, twice, long-200] }
  front: { parts: [body-a, long-200, plus-2] }
  bare: { parts: [body-a, long-200] }
lights:
  tube:
    kind: tungsten
    supply: mains
    illuminance: 900 lx
  bar:
    emitting-size: 240 x 120 mm
    at: { distance: 310 mm, elevation: 14 deg, azimuth: 5 deg }
    modulation: 130 Hz
    modulation-depth: 50 %
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: bare-lens, magnification: 0.1x, distance: 320 mm }
  strip:
    emitting-size: 200 x 100 mm
    at: { distance: 250 mm }
    modulation: none
    luminance: 900 cd/m2
subjects:
  relief: { kind: solid, size: 10 x 8 mm, depth: 1 mm, sag: 0.1 mm }
  plate: { kind: solid, depth: 1.5 mm }
  ball: { kind: bubble, diameter: 70 mm }
shots:
  by-ring:
    subject: plate
    rig: stack
    ring: 1 m
    tilt: 4 deg
    aperture: f/16
    shutter: 1/60 s
    iso: 1600
    record: full
    light: [tube]
    filters: [grey]
    relight: { tube: { dimmed: 1 stop } }
    move: { kind: slide, speed: 2 mm/s, along: upright, rail-angle: 1 deg, duration: 3 s }
  by-field:
    subject: ball
    rig: front
    field: 60 mm
    aperture: f/5.6
    shutter: 150 deg
    iso: 800
    record: full
    light: [bar]
  by-magnification:
    subject: plate
    rig: front
    magnification: 0.5x
    tilt: 3 deg
    aperture: f/22
    shutter: 1/70 s
    iso: 800
    record: full
    light: [bar]
    move: { kind: push-in, speed: 1 mm/s }
    take: { duration: 4 s }
  of-something-small:
    subject: relief
    rig: front
    field: 70 mm
    tilt: 2 deg
    aperture: f/11
    shutter: 1/80 s
    iso: 800
    record: full
    light: [bar, strip]
  through:
    subject: plate
    rig: bare
    field: 200 mm
    aperture: f/13
    shutter: 1/90 s
    iso: 640
    record: full
    light: [bar]
    move: { kind: focus-pull, from: 1.2 m, to: 1.2005 m }
`;

/** Of each key that goes into something: a line that holds it, as it stands and changed. */
const CHANGES: Readonly<Record<string, readonly [from: string, to: string]>> = {
  'plan.mains': ['mains: 50 Hz', 'mains: 60 Hz'],
  'plan.circle-of-confusion': ['confusion: 0.03 mm', 'confusion: 0.05 mm'],
  'deliver.resolution': ['resolution: 2560 x 1440', 'resolution: 1280 x 720'],
  'body.flange-distance': ['flange-distance: 44 mm', 'flange-distance: 40 mm'],
  'recording.resolution': ['resolution: 1920 x 1080', 'resolution: 1280 x 720'],
  'recording.rate': ['rate: 50 fps', 'rate: 25 fps'],
  'recording.area': ['area: 36 x 20.25 mm', 'area: 32 x 18 mm'],
  'lens.focal-length': ['focal-length: 200 mm', 'focal-length: 180 mm'],
  'lens.loss': ['loss: 0.3 stops', 'loss: 0.6 stops'],
  'closest.from-sensor': ['from-sensor: 0.85 m', 'from-sensor: 0.9 m'],
  'closest.magnification': ['magnification: 0.3x', 'magnification: 0.35x'],
  'lens.length': ['length: 165 mm', 'length: 150 mm'],
  'lens.extends': ['extends: 20 mm', 'extends: 10 mm'],
  'lens.pupil-ratio': ['pupil-ratio: 0.8', 'pupil-ratio: 1.1'],
  'tube.length': ['tube-36: { length: 36', 'tube-36: { length: 30'],
  'converter.factor': ['factor: 2x', 'factor: 1.4x'],
  'converter.length': ['length: 53 mm', 'length: 40 mm'],
  'converter.loss': ['length: 53 mm, loss: 0.1', 'length: 53 mm, loss: 0.2'],
  'close-up.power': ['power: 2 dpt', 'power: 2.2 dpt'],
  'close-up.loss': ['power: 2 dpt, loss: 0.1', 'power: 2 dpt, loss: 0.2'],
  'close-up.length': ['length: 8 mm', 'length: 12 mm'],
  'filter.length': ['length: 6 mm', 'length: 30 mm'],
  'filter.loss': ['loss: 1.5 stops', 'loss: 2 stops'],
  'light.emitting-size': ['emitting-size: 240 x 120 mm', 'emitting-size: 200 x 120 mm'],
  'light.luminance': ['luminance: 900 cd/m2', 'luminance: 700 cd/m2'],
  'placement.distance': ['at: { distance: 310 mm', 'at: { distance: 410 mm'],
  'placement.elevation': ['elevation: 14 deg', 'elevation: 24 deg'],
  'placement.azimuth': ['azimuth: 5 deg', 'azimuth: 15 deg'],
  'reading.distance': ['distance: 320 mm', 'distance: 420 mm'],
  'light.kind': ['kind: tungsten', 'kind: daylight'],
  'light.supply': ['supply: mains', 'supply: battery'],
  'light.illuminance': ['illuminance: 900 lx', 'illuminance: 500 lx'],
  'light.modulation': ['modulation: 130 Hz', 'modulation: 90 Hz'],
  'light.modulation-depth': ['modulation-depth: 50 %', 'modulation-depth: 20 %'],
  'reading.aperture': ['reading: { aperture: f/8', 'reading: { aperture: f/11'],
  'reading.shutter': ['aperture: f/8, shutter: 1/50', 'aperture: f/8, shutter: 1/100'],
  'reading.iso': ['iso: 400', 'iso: 200'],
  'reading.through': ['through: bare-lens', 'through: meter'],
  'reading.magnification': ['magnification: 0.1x', 'magnification: 0.2x'],
  'subject.kind': ['kind: bubble', 'kind: film'],
  'subject.size': ['size: 10 x 8 mm', 'size: 10 x 5 mm'],
  'subject.diameter': ['diameter: 70 mm', 'diameter: 90 mm'],
  'subject.depth': ['depth: 1 mm', 'depth: 2 mm'],
  'subject.sag': ['sag: 0.1 mm', 'sag: 0.3 mm'],
  'shot.field': ['field: 60 mm', 'field: 55 mm'],
  'shot.magnification': ['magnification: 0.5x', 'magnification: 0.45x'],
  'shot.ring': ['ring: 1 m', 'ring: infinity'],
  'shot.tilt': ['tilt: 4 deg', 'tilt: 6 deg'],
  'shot.tilt-axis': ['tilt: 3 deg', 'tilt: 3 deg\n    tilt-axis: upright'],
  'shot.aperture': ['aperture: f/5.6', 'aperture: f/22'],
  'shot.shutter': ['shutter: 150 deg', 'shutter: 120 deg'],
  'shot.iso': ['iso: 1600', 'iso: 3200'],
  'shot.filters': ['filters: [grey]', 'filters: []'],
  'relight.dimmed': ['dimmed: 1 stop', 'dimmed: 2 stops'],
  'move.kind': ['kind: push-in', 'kind: turntable'],
  'move.speed': ['speed: 1 mm/s', 'speed: 0.5 mm/s'],
  'move.along': ['along: upright', 'along: level'],
  'move.rail-angle': ['rail-angle: 1 deg', 'rail-angle: 2 deg'],
  'move.from': ['from: 1.2 m', 'from: 1.2002 m'],
  'move.to': ['to: 1.2005 m', 'to: 1.2008 m'],
  'move.duration': ['duration: 3 s', 'duration: 5 s'],
  'take.duration': ['duration: 4 s', 'duration: 5 s'],
};

const figuresOf = (text: string) => [...coreWith(text).figures(PLAN).values()];

function figureIn(figures: ShotFiguresJson, name: string): unknown {
  const [first = '', second] = name.split('.');
  const value = figures[first];
  return second === undefined ? value : (value as Readonly<Record<string, unknown>>)[second];
}

/** Results that a change moves in any shot; also where the plan leaves the circle of confusion out. */
function moved([from, to]: readonly [string, string]): Result[] {
  const pairs = [BENCH, BENCH.replace(/^circle.*\n/m, '')].map((text) => [
    figuresOf(text),
    figuresOf(text.replace(from, to)),
  ]);
  return (Object.keys(RESULTS) as Result[]).filter((result) =>
    RESULTS[result].figures.some((name) =>
      pairs.some(([before, after]) =>
        before!.some((shot, index) => differ(figureIn(shot, name), figureIn(after![index]!, name))),
      ),
    ),
  );
}

/** By more than the rounding of a chain traced again. */
function differ(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.some((one, index) => differ(one, b[index]));
  if (typeof a !== 'number' || typeof b !== 'number') return a !== b;
  return Math.abs(a - b) > 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

describe('what a value goes into', () => {
  it('starts from a bench on which every result is known', () => {
    const named = Object.values(RESULTS).flatMap(({ figures }): readonly string[] => figures);
    for (const { notKnown } of figuresOf(BENCH))
      expect(named.filter((name) => name in notKnown)).toEqual([]);
  });

  const keys = Object.entries(GOES_INTO).flatMap(([of, byKey]) =>
    Object.entries(byKey).map(([key, results]) => [`${of}.${key}`, results] as const),
  );

  it('is said of every key that is tried here, and of no other', () => {
    expect(keys.map(([key]) => key).sort()).toEqual(Object.keys(CHANGES).sort());
  });

  it('and each key moves exactly those results', () => {
    each(keys, ([key, results]) => {
      const change = CHANGES[key]!;
      expect(BENCH.split(change[0])).toHaveLength(2);
      expect(moved(change)).toEqual(
        (Object.keys(RESULTS) as Result[]).filter((result) => results.includes(result)),
      );
    });
  });
});
