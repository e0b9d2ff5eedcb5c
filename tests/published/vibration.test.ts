/**
 * Vibration, crossing and blur, at the subject. Sources: geometry of an image, m = image/object (Hecht,
 * Optics); seven seconds for a pan over the width of the frame at 24 fps (common practice of camera
 * crews, from memory); Airy's disk, 2.44·λ·N (Hecht, Optics).
 */
import { describe, expect, it } from 'vitest';
import {
  VIBRATION_BOOM,
  VIBRATION_HAND,
  VIBRATION_STAND,
  VIBRATION_TABLE,
} from '../../shared/assumptions/table.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const planWith = (change: Readonly<Record<string, string | null>>) => changed(EXAMPLE_PLAN, change);
const frostWith = (change: Readonly<Record<string, string | null>>) =>
  coreWith(planWith(change)).figures(PLAN).get('frost')!;

const ON = (stand: string): Readonly<Record<string, string | null>> => ({
  'kit/stands': `\n    post: { ${stand} }`,
  'rigs/bench/support': '{ stand: post, foot: 70 mm }',
});

// E. Hecht, Optics: the image of an amplitude A is A·m.
describe('vibration in pixels', () => {
  it('is the image of the amplitude over the pixel', () => {
    const { jitterPx, magnification, pixelUm } = frostWith(ON('kind: boom, vibration: 25 um'));
    expect(jitterPx).toBeCloseTo((25 * (magnification as number)) / (pixelUm as number), 9);
  });

  it('has the bounds of its kind while nobody measured it', () => {
    for (const [kind, prior] of [
      ['table', VIBRATION_TABLE],
      ['column', VIBRATION_TABLE],
      ['tripod', VIBRATION_STAND],
      ['stand', VIBRATION_STAND],
      ['boom', VIBRATION_BOOM],
      ['hand', VIBRATION_HAND],
    ] as const) {
      const frost = uncertainIn(planWith(ON(`kind: ${kind}`))).get('frost')!;
      const { jitterPx } = frost.middle.figures;
      const bounds = frost.bounds((of) => of.jitterPx)!;
      // 0.6x on pixels of 18.75 µm.
      const px = (mm: number) => (1000 * mm * 0.6) / 18.75;
      expect(jitterPx.known && jitterPx.value).toBeCloseTo(px(prior.middle), 9);
      expect([bounds.low, bounds.high].map((one) => one.toFixed(6))).toEqual(
        [px(prior.low), px(prior.high)].map((one) => one.toFixed(6)),
      );
    }
  });

  it('is none of a rig that stands on nothing known', () => {
    expect(frostWith({}).jitterPx).toBeNull();
    expect(frostWith({}).notKnown.jitterPx).toBe('the rig has no stand');
  });
});

// Common practice: a pan takes seven seconds over the width of the frame.
describe('crossing of the frame', () => {
  const crossing = (move: string) => frostWith({ 'shots/frost/move': move }).crossingS as number;

  it('is the field along the move over its speed', () => {
    expect(crossing('{ kind: slide, speed: 3 mm/s }')).toBeCloseTo(60 / 3, 6);
    expect(crossing('{ kind: slide, speed: 3 mm/s, along: upright }')).toBeCloseTo(33.75 / 3, 6);
  });

  it('of a pan follows its angle: the angle of the frame from the axis, over the speed', () => {
    const { subjectToSensorMm } = frostWith({});
    const frameDeg = (60 / (subjectToSensorMm as number)) * (180 / Math.PI);
    expect(crossing('{ kind: pan, speed: 0.5 deg/s }')).toBeCloseTo(frameDeg / 0.5, 6);
    expect(crossing('{ kind: tilt, speed: 0.5 deg/s }')).toBeCloseTo(
      (frameDeg * 20.25) / 36 / 0.5,
      6,
    );
  });

  it('is none of a push-in, a focus pull, a turntable or no move', () => {
    for (const move of ['{ kind: push-in, speed: 1 mm/s }', '{ kind: turntable, speed: 4 deg/s }'])
      expect(frostWith({ 'shots/frost/move': move }).crossingS).toBeNull();
    expect(frostWith({}).notKnown.crossingS).toBe('the shot has no slide, pan or tilt');
  });
});

// E. Hecht, Optics: Airy's disk is 2.44·λ·N wide.
it('the blur at the subject is the larger of circle and disk, over m', () => {
  const wide = frostWith({ 'shots/frost/aperture': 'f/4' });
  expect(wide.blurAtSubjectUm).toBeCloseTo(
    (1000 * (wide.circleOfConfusionMm as number)) / (wide.magnification as number),
    9,
  );
  const narrow = frostWith({ 'shots/frost/aperture': 'f/32' });
  const disk = 2.44 * 0.55 * (narrow.effectiveFNumber as number);
  expect(narrow.blurAtSubjectUm).toBeCloseTo(disk / (narrow.magnification as number), 6);
});
