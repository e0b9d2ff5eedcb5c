/**
 * What is left out where only the lens of a shot stands elsewhere, against doing all of it: the shot
 * read anew, and findings tried at both ends of every input.
 */
import { expect, it } from 'vitest';
import { figuresOf } from '../../shared/figures/compute.ts';
import { readBench } from '../../shared/figures/read-bench.ts';
import type { LaidOut, UncertainShot } from '../../shared/figures/uncertain.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { planOf } from '../bench/plan-of.ts';
import { MEASURED_PLAN } from '../support/measured-plan.ts';
import { NUMBERS } from '../support/numbers.ts';
import { changed } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const ROUNDING = 1e-9;

const anew = ({ bench: { source } }: LaidOut) => figuresOf(readBench(source.reader, source.shot));

/** The shot with its lens at each end of what its bench leaves uncertain. */
const elsewhere = (shot: UncertainShot): readonly LaidOut[] =>
  shot.widths.flatMap(({ low }, index) =>
    low.kind === 'lens-axis' ? [shot.alone(index, -1), shot.alone(index, 1)] : [],
  );

it('a shot is what reading it anew gives', () => {
  let tried = 0;
  for (const shot of uncertainIn(MEASURED_PLAN).values())
    for (const there of elsewhere(shot)) {
      const whole = anew(there);
      for (const [name, pick] of NUMBERS) {
        const [quick, slow] = [pick(there.figures), pick(whole)];
        expect(quick.known, name).toBe(slow.known);
        if (!quick.known || !slow.known) continue;
        tried++;
        if (quick.value !== slow.value)
          expect(Math.abs(quick.value / slow.value - 1), name).toBeLessThan(ROUNDING);
      }
    }
  expect(tried).toBeGreaterThan(100);
});

/** A wide shot that its lamp lights unevenly, at and around the closest setting of its lens. */
const FIELDS = [230, 236, 239, 240, 241, 242, 243, 244, 246, 250, 300, 420, 2000];
const UNEVEN = changed(planOf(FIELDS.length), {
  'kit/lenses/short-50/bench':
    '[{ with: [body-a], ring: closest, field: 241 mm }, { with: [body-a, tube-20], ring: infinity, field: 87 mm }]',
  ...Object.fromEntries(FIELDS.map((mm, at) => [`shots/shot-${at}/field`, `${mm} mm`])),
});

it('a frame that is said to be kept is the same everywhere, and so is its light', () => {
  const kept: boolean[] = [];
  for (const shot of uncertainIn(UNEVEN).values()) {
    kept.push(shot.keepsFrame);
    if (!shot.keepsFrame) continue;
    const { fieldMm, unevennessStops: light } = shot.middle.figures;
    if (!fieldMm.known || !light.known) throw new Error('The rig reaches it.');
    for (const there of elsewhere(shot)) {
      const { fieldMm: field, unevennessStops: lit } = anew(there);
      if (!field.known || !lit.known) throw new Error('The rig reaches it everywhere.');
      expect(Math.abs(field.value[0] / fieldMm.value[0] - 1)).toBeLessThan(ROUNDING);
      expect(Math.abs(lit.value / light.value - 1)).toBeLessThan(ROUNDING);
    }
  }
  // Beyond what the lens surely reaches nothing is said; far within it the frame is kept.
  expect(kept.slice(0, 4)).toEqual([false, false, false, false]);
  expect(kept.slice(-3)).toEqual([true, true, true]);
});

it('no frame is said to be kept by a shot that sets its ring', () => {
  const ringed = changed(EXAMPLE_PLAN, {
    'kit/lenses/macro-100/bench': '[{ with: [body-a], ring: closest, field: 36.1 mm }]',
    'shots/frost/field': null,
    'shots/frost/ring': '0.5 m',
  });
  const frost = uncertainIn(ringed).get('frost')!;
  expect(elsewhere(frost).length).toBeGreaterThan(4);
  expect(frost.keepsFrame).toBe(false);
});
