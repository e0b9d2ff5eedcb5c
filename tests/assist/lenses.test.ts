/** The state of a shot in a few words, over its name: what it says, and what it doesn't claim. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { LENS_KINDS, type LensKind } from '../../shared/api/beside-text.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

afterEach(() => vi.restoreAllMocks());

const wordsOf = (shot: string, text: string) => coreWith(text).lensWords(PLAN, shot);
const words = (shot: string, change: Parameters<typeof changed>[1] = {}) =>
  wordsOf(shot, changed(EXAMPLE_PLAN, change));

describe('a lens over each shot', () => {
  it('stands at its name, in the order of the text', () => {
    const lines = EXAMPLE_PLAN.split('\n');
    const lenses = coreWith(EXAMPLE_PLAN).lenses(PLAN);
    expect(lenses.map(({ shot }) => shot)).toEqual(['frost', 'skin']);
    for (const { shot, range } of lenses)
      expect(lines[range.start.line]!.slice(range.start.character)).toMatch(`${shot}:`);
  });

  it('stands without anything being worked out or read', () => {
    const figures = vi.spyOn(Analysis.prototype, 'figures');
    const bench = vi.spyOn(Analysis.prototype, 'bench');
    const core = coreWith(EXAMPLE_PLAN);
    core.lenses(PLAN);
    expect([...figures.mock.calls, ...bench.mock.calls]).toEqual([]);
    core.lensWords(PLAN, 'skin');
    expect(figures.mock.calls).toEqual([[PLAN, 'shots/skin']]);
  });

  it('stands over shots that share a line with others', () => {
    const text = 'shootplan: 1\nshots: { one: { aperture: f/8 }, two: {} }\n';
    const starts = coreWith(text)
      .lenses(PLAN)
      .map(({ range }) => [range.start.line, range.start.character]);
    expect(starts).toEqual([
      [1, text.split('\n')[1]!.indexOf('one')],
      [1, text.split('\n')[1]!.indexOf('two')],
    ]);
  });

  it('stands nowhere where there is no shot', () => {
    for (const text of ['', 'shootplan: 1\n', 'shots:\n', 'shots: []\n'])
      expect(coreWith(text).lenses(PLAN)).toEqual([]);
    expect(coreWith('').lenses('file:///w/none.shootplan.yaml')).toEqual([]);
  });
});

describe('its words', () => {
  it('are depth, exposure, mirror and checks', () => {
    expect(words('frost')).toMatch(
      /^DOF 2 mm \(\S+ to 2\), needs 1\.5 mm · exposure correct · \d checks open$/,
    );
    expect(words('skin')).toMatch(/ · tilt window \d\.\d–\d+° · \d+ checks open$/);
  });

  it('have bounds as far as a narrow window shows them', () => {
    const without = new Set<LensKind>(['reflections', 'checks']);
    const long = coreWith(EXAMPLE_PLAN).lensWords(PLAN, 'skin', without)!;
    expect(long).toMatch(/^DOF [^·]* \(\S+ to [^·]* · .*\(/);
    for (const said of [long, words('skin')!, words('frost')!])
      expect(said.length).toBeLessThanOrEqual(80);
    expect(words('skin')).not.toContain('(0');
  });

  it('leave out the kinds that are not wanted', () => {
    const core = coreWith(EXAMPLE_PLAN);
    const said = (...kinds: readonly LensKind[]) =>
      core.lensWords(PLAN, 'skin', new Set(LENS_KINDS.filter((kind) => !kinds.includes(kind))));
    expect(said('checks')).toMatch(/^\d+ checks open$/);
    expect(said('depth')).toMatch(/^DOF [^·]*$/);
    expect(said('reflections')).toMatch(/^no lens reflection [^·]*$/);
    expect(said('exposure', 'checks')!.split(' · ')).toHaveLength(2);
    expect(said('takes')).toBe('');
    const dark = coreWith(changed(EXAMPLE_PLAN, { 'shots/frost/light': null }));
    expect(dark.lensWords(PLAN, 'frost', new Set(['exposure']))).not.toContain('unknown');
  });

  // Common practice: twice the ISO is one stop more, half of it one less; 1250 is right.
  it.each([
    ['2500', /^(1|0\.9|1\.1) stops? over \(/],
    ['640', /^(1|0\.9|1\.1) stops? under \(/],
  ])('say how far off the exposure is: ISO %s', (iso, stops) => {
    expect(words('frost')).toContain('exposure correct');
    expect(words('frost', { 'shots/frost/iso': iso })!.split(' · ')[1]).toMatch(stops);
  });

  it('name the ISO that is needed where the body chooses it', () => {
    expect(words('frost', { 'shots/frost/iso': 'auto' })).toMatch(
      / · needs ISO \d+ \(\d+ to \d+\) · /,
    );
  });

  it('tell the same tilts as the figures', () => {
    const window = coreWith(EXAMPLE_PLAN).figures(PLAN).get('skin')!.tiltWindowDeg;
    const without = new Set(LENS_KINDS.filter((kind) => kind !== 'reflections'));
    const said = coreWith(EXAMPLE_PLAN).lensWords(PLAN, 'skin', without)!;
    const [, from, to] = said.match(/^no lens reflection at (\S+)–(\S+)°$/)!;
    const [least, greatest] = window as readonly [number, number];
    expect(Math.abs(Number(from) / least - 1)).toBeLessThan(0.05);
    expect(Math.abs(Number(to) / greatest - 1)).toBeLessThan(0.05);
  });

  it('say so where no tilt is clear', () => {
    expect(words('skin', { 'shots/skin/aperture': 'f/4' })).toContain(
      'lens reflected at every tilt',
    );
  });

  it('say what is not known, together', () => {
    expect(words('frost', { 'kit/lenses/macro-100/focal-length': null })).toMatch(
      /^DOF and exposure unknown · /,
    );
    expect(words('frost', { 'shots/frost/light': null })).toMatch(/^DOF .* · exposure unknown/);
    expect(wordsOf('one', 'shots:\n  one: {}\n')).toBe('DOF and exposure unknown');
  });

  it('claim nothing of a picture that the rig can’t take', () => {
    expect(words('frost', { 'shots/frost/field': '6 mm' })).toMatch(
      /^field out of reach · \d checks? open$/,
    );
  });

  it('count checks that are missing before those that are open', () => {
    expect(
      words('skin', {
        'shots/skin/preflight': '{ solution-ready: open }',
        'preflight/every-shot': null,
      }),
    ).toMatch(/ · \d+ checks missing, 1 open$/);
  });

  it('name a check or two that are missing', () => {
    expect(words('skin', { 'shots/skin/preflight/solution-ready': null })).toMatch(
      / · solution-ready missing, \d open$/,
    );
    expect(
      words('skin', {
        'shots/skin/preflight/solution-ready': null,
        'shots/skin/preflight/background-clear': null,
      }),
    ).toMatch(/ · background-clear and solution-ready missing, \d open$/);
  });

  it('say that checks are done', () => {
    const done = '{ done: 2027-03-02, by: op }';
    const names = ['focus-at-full-size', 'record-setting-read-back', 'exposure-confirmed'];
    const every = changed(EXAMPLE_PLAN, {
      'preflight/once': `{ card-and-battery: ${done}, white-balance-fixed: ${done} }`,
      'preflight/every-shot': `[${names.join(', ')}]`,
      'shots/frost/preflight': `{ ${names.map((name) => `${name}: ${done}`).join(', ')} }`,
    });
    expect(wordsOf('frost', every)).toMatch(/ · checks done$/);
  });

  it('are none of a shot that isn’t there', () => {
    expect(words('nobody')).toBeNull();
    expect(coreWith('').lensWords(PLAN, 'frost')).toBeNull();
  });

  it('say it of a shot that is no mapping', () => {
    expect(wordsOf('one', 'shots:\n  one: two\n')).toMatch(/has errors|unknown/);
  });
});
