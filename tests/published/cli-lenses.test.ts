/** Published lenses, thin and thick, on written plans. */
import { describe, expect, it } from 'vitest';
import type { ChainPart } from '../../shared/optics/parts.ts';
import { heightAt, type Ray } from './support/bench.ts';
import { unitFocusing } from './support/chains.ts';
import { figuresOfPlan, numberIn } from './support/command-line.ts';
import { type WrittenShot, writtenPlan } from './support/written-plan.ts';

const body: ChainPart = { kind: 'body', flangeMm: 20 };
const tube = (lengthMm: number): ChainPart => ({ kind: 'tube', lengthMm });
const figuresOf = (shots: Readonly<Record<string, WrittenShot>>) =>
  figuresOfPlan(writtenPlan(shots));

/** Numbers from OpenStax University Physics vol. 3, ch. 2, and College Physics, ch. 25. */
describe('thin lenses (OpenStax)', () => {
  const { fly, thirteen, far } = figuresOf({
    // The lens stands 33 mm from the film: 11 mm of tube behind its 22 mm at infinity.
    fly: {
      parts: [body, tube(11), unitFocusing(22, 1)],
      fields: { ring: 'infinity', aperture: 'f/8' },
    },
    thirteen: {
      parts: [body, tube(1), unitFocusing(50, 1)],
      fields: { ring: 'infinity', aperture: 'f/8' },
    },
    // Object 3.00 m from the lens, image 50.8475 mm behind it: 3.0508475 m on the ring.
    far: {
      parts: [body, unitFocusing(50, 1)],
      fields: { ring: '3050.8475 mm', aperture: 'f/8' },
    },
  });

  it('f 22 mm, 33 mm from lens to film: object at 66.0 mm, magnification 0.500', () => {
    expect(numberIn(fly, 'subjectToSensorMm') - 33).toBeCloseTo(66.0, 7);
    expect(numberIn(fly, 'magnification')).toBeCloseTo(0.5, 9);
  });

  it('f 50 mm, image at 51 mm: object at 2.55 m', () => {
    expect((numberIn(thirteen, 'subjectToSensorMm') - 51) / 1000).toBeCloseTo(2.55, 8);
  });

  it('f 50 mm, object at 3.00 m: image at 50.8 mm, magnification 0.01695', () => {
    const m = numberIn(far, 'magnification');
    expect(m).toBeCloseTo(0.01695, 5);
    expect((50 * (1 + m)).toFixed(1)).toBe('50.8');
  });
});

describe('exposure compensation for extension', () => {
  // US Army photography course SS0512: a 12 in lens at 18 in of bellows extension, factor (18/12)²,
  // so that an exposure of 8 s becomes one of 18 s.
  it('12 in at 18 in: 2.25 times; 18 s is right where 8 s was read', () => {
    const shots = figuresOf({
      bellows: {
        parts: [body, tube(6 * 25.4), unitFocusing(12 * 25.4, 1)],
        light: {
          kind: 'daylight',
          reading: '{ aperture: f/16, shutter: 8 s, iso: 100, through: meter }',
        },
        fields: { ring: 'infinity', aperture: 'f/16', shutter: '18 s', iso: '100' },
      },
    });
    const { bellows } = shots;
    expect(2 ** numberIn(bellows, 'lightLossStops')).toBeCloseTo(2.25, 8);
    expect(numberIn(bellows, 'effectiveFNumber')).toBeCloseTo(24, 8);
    expect(numberIn(bellows, 'exposureErrorStops')).toBeCloseTo(0, 8);
    expect(numberIn(bellows, 'isoNeeded')).toBeCloseTo(100, 6);
  });
});

/**
 * W. J. Smith, Modern Lens Design, p. 304: a double Gauss, surface by surface, its stop between the
 * fifth and sixth glass surface. Rays are followed from surface to surface, n′u′ = n·u − y·(n′ − n)/R;
 * the plan knows the lens by its focal length and its pupil ratio alone.
 */
describe('a thick lens, known by focal length and pupil ratio (Smith)', () => {
  const radii = [93.32, 358.29, 46.32, Infinity, 28.68, Infinity, -41.32, 60.8, -55, 90.2, -212.58];
  const gaps = [11.32, 0.4, 20, 2, 14, 10, 6, 22, 13, 16];
  const indices = [1, 1.717, 1, 1.643, 1.589, 1, 1, 1.762, 1.744, 1, 1.717, 1];
  const places = radii.map((_, index) => gaps.slice(0, index).reduce((sum, gap) => sum + gap, 0));
  const STOP = 5;

  /** Toward the sensor from before surface `from` to behind surface `to`; z grows toward the sensor. */
  function follow({ z, y, slope }: Ray, from: number, to: number): Ray {
    const at = { z, y, slope };
    for (let surface = from; surface <= to; surface++) {
      const [before, behind] = [indices[surface]!, indices[surface + 1]!];
      at.y += at.slope * (places[surface]! - at.z);
      at.z = places[surface]!;
      at.slope = (before * at.slope - (at.y * (behind - before)) / radii[surface]!) / behind;
    }
    return at;
  }

  const last = radii.length - 1;
  const parallel = follow({ z: -10, y: 1, slope: 0 }, 0, last);
  const focal = -1 / parallel.slope;
  const rearFocus = parallel.z - parallel.y / parallel.slope;
  /** Height at the stop of a ray that comes parallel to the axis at height 1: entrance pupil to stop. */
  const stopHeight = (ray: Ray) => heightAt(follow(ray, 0, STOP - 1), places[STOP]!);
  const entranceRadius = 1 / stopHeight({ z: 0, y: 1, slope: 0 });
  // Backward from the sensor's side the ray parallel to the axis is found from two trial rays.
  const exitOf = (slope: number) => follow({ z: places[STOP]!, y: 1, slope }, STOP, last);
  const [none, one] = [exitOf(0), exitOf(1)];
  const leaving = exitOf(-none.slope / (one.slope - none.slope));
  const pupilRatio = Math.abs(leaving.y) / entranceRadius;

  it('is Smith’s: focal length 100.1, back focus 56.42, within 0.1 %', () => {
    expect(Math.abs(focal / 100.1 - 1)).toBeLessThan(0.001);
    expect(Math.abs((rearFocus - places[last]!) / 56.42 - 1)).toBeLessThan(0.001);
  });

  it('on tubes: magnification and effective f-number as the surfaces give them', () => {
    const tubes = [12, 25, 36, 68, 130, 200];
    const shots = figuresOf(
      Object.fromEntries(
        tubes.map((length, index) => [
          `tube-${index}`,
          {
            parts: [body, tube(length), { kind: 'lens', focalMm: focal, pupilRatio }],
            fields: { ring: 'infinity', aperture: 'f/8' },
          },
        ]),
      ),
    );
    for (const [index, length] of tubes.entries()) {
      const sensor = rearFocus + length;
      // The point of the axis that is sharp on the sensor: where the ray from it meets the axis there.
      const meets = (distance: number) =>
        heightAt(follow({ z: -distance, y: 0, slope: 1 }, 0, last), sensor);
      const distance = -meets(0) / (meets(1) - meets(0));
      const image = heightAt(follow({ z: -distance, y: 1, slope: 0 }, 0, last), sensor);
      const shot = shots[`tube-${index}`];
      expect(numberIn(shot, 'magnification')).toBeCloseTo(Math.abs(image), 6);
      // The marginal ray fills the stop that makes f/8 of parallel light.
      const stopRadius = focal / 8 / 2 / entranceRadius;
      const unit = stopHeight({ z: -distance, y: 0, slope: 1 });
      const marginal = follow({ z: -distance, y: 0, slope: stopRadius / unit }, 0, last);
      const effective = 1 / (2 * Math.abs(marginal.slope));
      expect(numberIn(shot, 'effectiveFNumber')).toBeCloseTo(effective, 5);
      // What a pupil ratio of 1 would have said is something else.
      expect(Math.abs(effective / (8 * (1 + Math.abs(image))) - 1)).toBeGreaterThan(0.001);
    }
  });
});
