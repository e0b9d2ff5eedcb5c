/**
 * One count of what a shot has come to: lens, sheet, status bar and command line tell the same, and
 * call nothing clear that can't be told.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const both = { ready: 2, shots: 2 };

const sheetStates = (text: string) =>
  coreWith(text)
    .sheet(PLAN)
    .shots.map(({ state, lacks }) => [state, lacks]);

describe('a plan', () => {
  it('is clear where nothing is found and nothing is lacking', () => {
    expect(coreWith(EXAMPLE_PLAN).state(PLAN)).toEqual(both);
    expect(sheetStates(EXAMPLE_PLAN)).toEqual([
      ['ready', []],
      ['ready', []],
    ]);
  });

  it('is not where a file that it uses is missing', () => {
    const text = `use: [kit.shootplan.yaml]\n${EXAMPLE_PLAN}`;
    const core = coreWith(text);
    core.refuse('file:///w/kit.shootplan.yaml', 'not-found');
    expect(core.state(PLAN)).toEqual({ ready: 0, shots: 2, errors: 1 });
    expect(core.sheet(PLAN).shots.map(({ lacks }) => lacks)).toEqual([
      ['part of the plan is unread'],
      ['part of the plan is unread'],
    ]);
  });

  it('is not where its text has an error, though no shot stands there', () => {
    const core = coreWith(EXAMPLE_PLAN.replace('kit:\n', 'kit:\n  nonsense\n'));
    expect(core.state(PLAN)).toMatchObject({ ready: 0, shots: 2 });
    expect(core.state(PLAN).errors).toBeGreaterThan(0);
  });

  it.each([
    ['depth of field', { 'kit/lenses/macro-100/focal-length': null }, /DOF/],
    ['exposure', { 'shots/frost/light': null }, /exposure unknown/],
  ] as const)('has a shot that is not clear where its %s is unknown', (_, change, words) => {
    const text = changed(EXAMPLE_PLAN, change);
    const frost = coreWith(text)
      .sheet(PLAN)
      .shots.find(({ name }) => name === 'frost')!;
    expect(frost.state).not.toBe('ready');
    expect(frost.lacks.join()).toMatch(words);
  });

  it('counts the same checks over the shot and on its sheet', () => {
    for (const shot of ['frost', 'skin']) {
      const core = coreWith(EXAMPLE_PLAN);
      const sheet = core.sheet(PLAN).shots.find(({ name }) => name === shot)!;
      const open = sheet.checks.filter(({ done }) => !done).length;
      expect(core.lensWords(PLAN, shot)).toContain(`${open} checks open`);
      expect(core.sheet(PLAN).once.length).toBeGreaterThan(0);
    }
  });

  it('has as many shots clear as its sheet says', () => {
    const changes: readonly Parameters<typeof changed>[1][] = [
      {},
      { 'shots/frost/aperture': 'f/2.8' },
      { 'shots/skin/preflight': null, 'preflight/every-shot': null },
      { 'shots/frost/field': 'soon' },
      { 'shots/frost/rig': null },
    ];
    for (const change of changes) {
      const text = changed(EXAMPLE_PLAN, change);
      const clear = sheetStates(text).filter(([state]) => state === 'ready').length;
      expect(coreWith(text).state(PLAN).ready, JSON.stringify(change)).toBe(clear);
    }
  });
});
