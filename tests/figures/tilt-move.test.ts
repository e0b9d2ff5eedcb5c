/** A tilt of the camera is a pan about the level axis: it carries the subject up or down the frame. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const moved = (move: string) => changed(EXAMPLE_PLAN, { 'shots/frost/move': move });
const figuresOf = (move: string) => coreWith(moved(move)).figures(PLAN).get('frost')!;

it('is judged as a pan is, whichever way it is written', () => {
  const [still, tilt, pan, upright] = [
    '{ kind: slide, speed: 0 mm/s }',
    '{ kind: tilt, speed: 0.6 deg/s }',
    '{ kind: pan, speed: 0.6 deg/s }',
    '{ kind: pan, speed: 0.6 deg/s, along: upright }',
  ].map(figuresOf);
  // It crosses the height of the frame, a pan its width.
  const height = (20.25 / 36) * (pan!.crossingS as number);
  expect(tilt!.crossingS).toBeCloseTo(height, 9);
  expect({ ...tilt, crossingS: null }).toEqual({ ...pan, crossingS: null });
  expect(tilt).toEqual(upright);
  expect(tilt!.smearPx).not.toEqual(still!.smearPx);
  expect(tilt!.smearPx).toBeGreaterThan(1);
});

it('turns: a speed along a line is none that it can have', () => {
  expect(figuresOf('{ kind: tilt, speed: 2 mm/s }').smearPx).toBeNull();
});

it('is what a pan along the upright axis is called', () => {
  const text = moved('{ kind: pan, speed: 0.6 deg/s, along: upright }');
  const core = coreWith(text);
  const found = core.findings(PLAN).find(({ rule }) => rule === 'usual-spelling');
  expect(found).toMatchObject({ severity: 'hint', what: expect.stringContaining('tilt') });
  const [fix] = core.fixesOf(found!);
  expect(fix).toMatchObject({ title: 'Call it `tilt`' });
  expect(fix?.sideEffects).toBeUndefined();
  const after = applied(text, fix!.edits);
  expect(after).toBe(moved('{ kind: tilt, speed: 0.6 deg/s }'));
  const rules = findingsOf(after).map(({ rule }) => rule);
  expect(rules).not.toContain('usual-spelling');
  expect(rules).toContain('motion-blur');
});

it('says nothing of a pan that goes level, or of a slide that goes up', () => {
  for (const move of [
    '{ kind: pan, speed: 0.6 deg/s, along: level }',
    '{ kind: pan, speed: 0.6 deg/s }',
    '{ kind: slide, speed: 2 mm/s, along: upright }',
  ])
    expect(findingsOf(moved(move)).map(({ rule }) => rule)).not.toContain('usual-spelling');
});
