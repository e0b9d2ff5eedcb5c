/** `lamella solve`, and once as it is shipped. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { lamella } from '../published/support/command-line.ts';
import { lamellaHere } from '../support/command-line.ts';
import { changed } from '../support/plans.ts';

const NAME = 'a.shootplan.yaml';

const solve = (text: string, ...args: readonly string[]) =>
  lamellaHere(['solve', NAME, ...args], { [NAME]: text });

describe('solve', () => {
  it('says the least change and its reason, and changes nothing', async () => {
    const dark = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '200' });
    const { status, out, err } = await solve(dark, '--shot', 'frost');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^1 change clears frost:\n {2}iso: 200 \u2192 1000\n/);
    const json = JSON.parse((await solve(dark, '--shot', 'frost', '--format', 'json')).out);
    expect(json).toMatchObject({
      version: 1,
      file: NAME,
      shot: 'frost',
      outcome: 'solved',
      changes: [{ setting: 'iso', from: '200', to: '1000', because: [{ rule: 'exposure-off' }] }],
    });
    expect(json.edits).toBeUndefined();
    const shipped = lamella(['solve', NAME, '--shot', 'frost'], { [NAME]: dark });
    expect(shipped).toEqual({ status, out, err });
  });

  it('says which demands exclude each other where nothing solves it, with status 1', async () => {
    const deep = changed(EXAMPLE_PLAN, {
      'subjects/frost-plate/depth': '60 mm',
      'shots/frost/field': '40 mm',
    });
    const { status, out } = await solve(deep, '--shot', 'frost');
    expect(status).toBe(1);
    expect(out).toMatch(/^No settings meet every requirement of frost\.\n/);
    expect(out).toContain('Conflicting requirements:');
    expect(out).toMatch(/Depth of field is .*; frost-plate needs 60 mm\. At best, with f\//);
  });

  it('says what is not known, so that nothing was held to it', async () => {
    const gaps = changed(EXAMPLE_PLAN, {
      'lights/panel/modulation': null,
      'subjects/frost-plate/depth': '3 mm',
      'shots/frost/field': '40 mm',
    });
    const { out } = await solve(gaps, '--shot', 'frost');
    // Before what was changed.
    expect(out).toMatch(
      /^\d changes? clears? frost:\n {2}Not checked, because data is missing:\n {4}flicker: needs `modulation` of panel\n {2}aperture: /,
    );
    const json = JSON.parse((await solve(gaps, '--shot', 'frost', '--format', 'json')).out);
    expect(json.notKnown).toEqual({ flickerResidual: 'needs `modulation` of panel' });
  });

  it('says a light that stands elsewhere by its name', async () => {
    const close = changed(EXAMPLE_PLAN, {
      'lights/strip/at': '{ distance: 300 mm, elevation: 3 deg }',
      'shots/frost/light': '[strip]',
    });
    expect((await solve(close, '--shot', 'frost')).out).toContain(
      '  distance of strip: 300 mm \u2192 380 mm\n',
    );
    // Programs go on reading the plan's path.
    const json = JSON.parse((await solve(close, '--shot', 'frost', '--format', 'json')).out);
    expect(json.changes[0].setting).toBe('relight.strip.at.distance');
  });

  it('has nothing to say of a shot that is clear', async () => {
    const { status, out } = await solve(EXAMPLE_PLAN, '--shot', 'frost');
    expect({ status, out }).toEqual({
      status: 0,
      out: 'No setting of frost needs a change.\n',
    });
  });

  it.each([
    [[], /needs --shot NAME/],
    [['--shot', 'frosd'], /Did you mean frost\?/],
  ])('%s is wrong use', async (args, said) => {
    const { status, err } = await solve(EXAMPLE_PLAN, ...args);
    expect(status).toBe(2);
    expect(err).toMatch(said);
  });
});
