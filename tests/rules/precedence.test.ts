/** One cause, one finding: wherever two rules would both speak, the table says which does. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { PRECEDENCE } from '../../shared/rules/precedence.ts';
import { RULE_NAMES } from '../../shared/rules/registry.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { runShotRules } from '../../shared/workspace/shot-findings.ts';
import { Store } from '../../shared/workspace/store.ts';
import { changed, findingsOf, PLAN, ROOT } from '../support/plans.ts';

type Change = Readonly<Record<string, string | null>>;

/** Changes of the examples' plan that break one rule each in the same shot, to be put together. */
const BREAKS: Readonly<Record<string, readonly Change[]>> = {
  'field-out-of-reach': [{ 'shots/frost/field': '6 mm' }, { 'shots/skin/field': '2 mm' }],
  'aperture-not-on-lens': [{ 'shots/frost/aperture': 'f/64' }, { 'shots/skin/aperture': 'f/64' }],
  'shutter-too-slow': [{ 'shots/frost/shutter': '1/15 s' }],
  'depth-short': [{ 'shots/frost/aperture': 'f/4' }, { 'subjects/frost-plate/depth': '40 mm' }],
  'lens-in-the-mirror': [{ 'shots/skin/tilt': '1 deg' }],
  'smaller-than-delivery': [{ 'shots/frost/record': 'small-25' }],
  'iso-out-of-range': [{ 'shots/frost/iso': '102400' }],
};

/** What else would speak in each pair, so that silence is the winner's doing. */
const ALSO: Readonly<Record<string, readonly Change[]>> = {
  'diffraction-eats-detail': [
    { 'shots/frost/rig': 'stacked', 'shots/frost/field': '30 mm', 'shots/frost/aperture': 'f/32' },
  ],
  'exposure-off': [{ 'shots/frost/iso': '100' }],
  'iso-out-of-range': [{ 'shots/frost/iso': '102400' }],
  'lamp-flicker': [{ 'shots/frost/light': '[bulb]' }],
  'source-too-small': [{ 'lights/strip/at': '{ distance: 300 mm, up: 40 deg }' }],
  'background-washes': [{ 'shots/skin/background': '60 cd/m2' }],
  'depth-short': [{ 'shots/skin/aperture': 'f/4', 'shots/skin/tilt': '3 deg' }],
  'better-setting-idle': [{}],
};

/** Rules that speak in a shot before any silences another. */
function spoken(text: string): ReadonlySet<string> {
  const store = new Store();
  const analysis = new Analysis(store, () => ROOT);
  store.give(PLAN, text);
  return new Set(
    analysis.shots(PLAN).flatMap((shot) => {
      const bench = analysis.bench(PLAN, shot)!;
      const figures = analysis.figures(PLAN, shot)!;
      return runShotRules({ bench, figures }).map(({ rule, shot: name }) => `${name} ${rule}`);
    }),
  );
}

const pairs = Object.entries(PRECEDENCE).flatMap(([winner, losers]) =>
  losers.map((loser) => [winner, loser] as const),
);

describe('the table', () => {
  it('names only rules that are there, and no two that silence each other', () => {
    for (const [winner, loser] of pairs) {
      expect(RULE_NAMES).toContain(winner);
      expect(RULE_NAMES).toContain(loser);
      expect(PRECEDENCE[loser] ?? [], `${winner} and ${loser}`).not.toContain(winner);
    }
  });
});

describe.each(pairs)('%s goes before %s', (winner, loser) => {
  it('only the first speaks of a shot', () => {
    for (const first of BREAKS[winner] ?? [])
      for (const second of ALSO[loser] ?? [{}]) {
        const text = changed(EXAMPLE_PLAN, { ...second, ...first });
        const said = findingsOf(text).map(({ shot, rule }) => `${shot} ${rule}`);
        for (const shot of ['frost', 'skin'])
          if (said.includes(`${shot} ${winner}`)) expect(said).not.toContain(`${shot} ${loser}`);
      }
  });
});

describe('pairs that really meet', () => {
  it.each([
    [
      'smaller-than-delivery',
      'better-setting-idle',
      {
        'shots/frost/record': 'small-25',
        'kit/bodies/body-a/record/small-50':
          '{ size: 1280 x 720, rate: 50 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }',
      },
      'frost',
    ],
    [
      'depth-short',
      'diffraction-eats-detail',
      {
        'shots/frost/rig': 'stacked',
        'shots/frost/field': '30 mm',
        'shots/frost/aperture': 'f/32',
        'subjects/frost-plate/depth': '60 mm',
      },
      'frost',
    ],
    ['shutter-too-slow', 'exposure-off', { 'shots/frost/shutter': '1/15 s' }, 'frost'],
    [
      'shutter-too-slow',
      'lamp-flicker',
      { 'shots/frost/shutter': '1/15 s', 'shots/frost/light': '[bulb]' },
      'frost',
    ],
    ['iso-out-of-range', 'exposure-off', { 'shots/frost/iso': '102400' }, 'frost'],
    ['lens-in-the-mirror', 'source-too-small', { 'shots/skin/tilt': '1 deg' }, 'skin'],
    [
      'lens-in-the-mirror',
      'depth-short',
      { 'shots/skin/aperture': 'f/4', 'shots/skin/tilt': '3 deg' },
      'skin',
    ],
    ['aperture-not-on-lens', 'exposure-off', { 'shots/frost/aperture': 'f/64' }, 'frost'],
  ] as const)('%s, %s', (winner, loser, change, shot) => {
    const text = changed(EXAMPLE_PLAN, change);
    expect([...spoken(text)]).toEqual(
      expect.arrayContaining([`${shot} ${winner}`, `${shot} ${loser}`]),
    );
    const said = findingsOf(text).flatMap((found) => (found.shot === shot ? [found.rule] : []));
    expect(said).toContain(winner);
    expect(said).not.toContain(loser);
  });
});
