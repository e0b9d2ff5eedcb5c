/** Lights and bodies as people have them: one mistake of each kind, and the checks that they call for. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const saidIn = (change: Readonly<Record<string, string>>) =>
  findingsOf(changed(EXAMPLE_PLAN, change)).filter(({ severity }) => severity !== 'hint');

describe('a light', () => {
  const OUT = {
    'lights/panel/colour-range': '2700 to 6500 K',
    'shots/frost/relight': '{ panel: { colour-temperature: 2200 K } }',
    'shots/frost/white-balance': '2200 K',
  };

  it('that is set to a colour that it hasn’t is found, and set to the nearest that it has', () => {
    const text = changed(EXAMPLE_PLAN, OUT);
    const core = coreWith(text);
    const [finding] = core.findings(PLAN).filter(({ rule }) => rule === 'colour-out-of-range');
    expect(finding).toMatchObject({
      severity: 'error',
      shot: 'frost',
      why: 'Its range is 2700 K to 6500 K.',
      numbers: { kelvin: 2200, lowestKelvin: 2700, highestKelvin: 6500 },
    });
    const [fix] = core.fixesOf(finding!);
    expect(fix!.title).toBe('Set 2700 K');
    expect(applied(text, fix!.edits)).toContain('colour-temperature: 2700 K');
  });

  it('whose gels leave it no colour temperature is found at its gels', () => {
    const text = changed(EXAMPLE_PLAN, {
      'kit/gels': '{ deep-blue: { transmission: 8 %, shift: -200 mired } }',
      'shots/frost/relight': '{ panel: { gels: [deep-blue] } }',
      'shots/frost/iso': 'auto',
    });
    const found = findingsOf(text).filter(({ rule }) => rule === 'colour-out-of-range');
    expect(found).toMatchObject([
      {
        what: 'The gels leave `panel` no colour temperature.',
        // 1e6 / 5600 K.
        why: 'They shift it by \u2212200 mired; it has 179 mired itself.',
      },
    ]);
    expect(text.split('\n')[found[0]!.range.start.line]).toContain('gels: [deep-blue]');
  });

  it('at an end of its range is set as it can be', () => {
    const atEnd = { ...OUT, 'shots/frost/relight': '{ panel: { colour-temperature: 2700 K } }' };
    expect(saidIn(atEnd).filter(({ rule }) => rule === 'colour-out-of-range')).toEqual([]);
  });

  it.each([
    ['cri', 'CRI'],
    ['tlci', 'TLCI'],
  ])('with a %s under 90 is noted once, from 90 on not at all', (key, word) => {
    const low = saidIn({ [`lights/panel/${key}`]: '89' });
    expect(low.map(({ rule, severity, what }) => [rule, severity, what])).toEqual([
      ['colour-rendering-low', 'note', `\`panel\` has a ${word} of 89; 90 is usual for pictures.`],
    ]);
    expect(saidIn({ [`lights/panel/${key}`]: '90' })).toEqual([]);
  });
});

describe('what a body or lens has calls for its check', () => {
  const missing = (change: Readonly<Record<string, string>>): string =>
    saidIn(change)
      .filter(({ rule }) => rule === 'check-missing')
      .map(({ why }) => why)
      .join();

  it('a stabiliser only on a support', () => {
    const has = { 'kit/bodies/body-a/has': '[stabiliser]' };
    expect(missing(has)).toBe('');
    const support = { 'shots/frost/support': '{ foot: 60 mm }' };
    expect(missing({ ...has, ...support })).toContain('switch the stabiliser off');
    expect(missing(support)).not.toContain('stabiliser');
  });

  it('autofocus of the body, focus by wire of the lens', () => {
    expect(missing({ 'kit/bodies/body-a/has': '[autofocus]' })).toContain('switch autofocus off');
    expect(missing({ 'kit/lenses/macro-100/has': '[focus-by-wire]' })).toContain('set focus again');
  });

  it('and is quiet once the checks are there', () => {
    const done = {
      'kit/bodies/body-a/has': '[autofocus]',
      'shots/frost/preflight/autofocus-off': 'open',
      'shots/skin/preflight/autofocus-off': 'open',
    };
    expect(missing(done)).toBe('');
  });

  it('a feature under another spelling is answered with the plan’s own', () => {
    const core = coreWith(changed(EXAMPLE_PLAN, { 'kit/bodies/body-a/has': '[stabilizer]' }));
    const [finding] = core.findings(PLAN).filter(({ severity }) => severity === 'error');
    expect(core.fixesOf(finding!).map(({ title }) => title)).toEqual(['Write stabiliser']);
  });
});
