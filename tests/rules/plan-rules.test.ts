/** Rules that look at the plan as a whole: what is left over, adrift, or waited for. */
import { describe, expect, it } from 'vitest';
import { KNOWN_CHECKS } from '../../shared/rules/checks-called-for.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ruleNamed } from '../../shared/rules/registry.ts';
import { applied, changed, coreWith, findingsOf, PLAN, ROOT } from '../support/plans.ts';

const of = (rule: string, text: string) =>
  findingsOf(text).filter((finding) => finding.rule === rule);

const lineOf = (
  text: string,
  { range }: { readonly range: { readonly start: { line: number } } },
) => text.split('\n')[range.start.line]?.trim();

/** The shot `frost` again, under other names. */
const withTwins = (...names: readonly string[]): string => {
  const start = EXAMPLE_PLAN.indexOf('  frost:\n');
  const frost = EXAMPLE_PLAN.slice(start, EXAMPLE_PLAN.indexOf('  skin:\n'));
  const twins = names.map((name) => frost.replace('frost:', `${name}:`)).join('');
  return EXAMPLE_PLAN.replace('  skin:\n', `${twins}  skin:\n`);
};

describe('white balance', () => {
  it('of one shot among several under one light stands on its value', () => {
    const text = changed(withTwins('rime', 'thaw'), { 'shots/rime/white-balance': '4300 K' });
    const [found, ...more] = of('white-balance-adrift', text);
    expect(more).toEqual([]);
    expect(lineOf(text, found!)).toBe('white-balance: 4300 K');
    expect(found?.numbers).toEqual({ kelvin: 4300, othersKelvin: 5600 });
  });

  it('under light of another colour may be another', () => {
    const text = changed(withTwins('rime', 'thaw'), {
      'shots/rime/white-balance': '3200 K',
      'shots/rime/light': '[bulb]',
    });
    expect(of('white-balance-adrift', text)).toEqual([]);
  });

  // A step of about 5 mired is just noticeable (Judd, 1933, cited from memory): 5600 K and 5500 K
  // are 3.2 mired apart, 5600 K and 5400 K 6.6.
  it.each([
    ['5500 K', 0],
    ['5400 K', 1],
  ])('of %s against 5600 K: %i', (value, count) => {
    const text = changed(withTwins('rime', 'thaw'), { 'shots/rime/white-balance': value });
    expect(of('white-balance-adrift', text)).toHaveLength(count);
  });

  it('that is automatic is set to what the others have', () => {
    const text = changed(withTwins('rime', 'thaw'), { 'shots/rime/white-balance': 'auto' });
    const core = coreWith(text);
    const [found] = core.findings(PLAN).filter(({ rule }) => rule === 'white-balance-adrift');
    const [fix] = core.fixesOf(found!);
    expect(fix?.sideEffects).toBeUndefined();
    expect(applied(text, fix!.edits)).toBe(withTwins('rime', 'thaw'));
  });
});

describe('white balance under a gel', () => {
  const GELLED = {
    'kit/gels': '{ half-orange: { shift: 81 mired, transmission: 73 % } }',
    'shots/frost/relight': '{ panel: { gels: [half-orange] } }',
    'shots/frost/iso': 'auto',
  };
  const text = changed(EXAMPLE_PLAN, GELLED);

  // Reciprocal colour temperatures add (Wyszecki and Stiles, from memory): 1e6 / 5600 + 81 mired are
  // 1e6 / 3853. Swatch books print half of the conversion from daylight to tungsten lamps as about
  // 81 mired (common practice).
  it('is held against the colour behind it, as a note', () => {
    const [found, ...more] = of('white-balance-adrift', text);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      severity: 'note',
      what: 'White balance is 5600 K; `panel` has 3850 K behind its gels (+81 mired).',
      numbers: { kelvin: 5600, gelsMired: 81 },
    });
    expect(found?.numbers?.lightKelvin).toBeCloseTo(1e6 / (1e6 / 5600 + 81), 6);
    const core = coreWith(text);
    const [fix] = core.fixesOf(core.findings(PLAN).find(({ rule }) => rule === found!.rule)!);
    expect(fix?.title).toBe('Set white balance to 3850 K');
    expect(of('white-balance-adrift', applied(text, fix!.edits))).toEqual([]);
  });

  // 5600 K and 4900 K are 25.5 mired apart, 5600 K and 5000 K 21.4.
  it.each([
    ['5000 K', 0],
    ['4900 K', 1],
    ['6600 K', 1],
  ])('of %s under a bare lamp of 5600 K: %i', (value, count) => {
    const bare = changed(EXAMPLE_PLAN, { 'shots/frost/white-balance': value });
    expect(of('white-balance-adrift', bare)).toHaveLength(count);
  });

  it('between two lamps of different colours is no cast', () => {
    const mixed = changed(text, { 'shots/frost/light': '[panel, bulb]' });
    const between = changed(mixed, { 'shots/frost/white-balance': '3500 K' });
    expect(of('white-balance-adrift', between)).toEqual([]);
  });

  it('is shown with the colour behind it, in hover and sheet', () => {
    const core = coreWith(text);
    const lines = text.split('\n');
    const line = lines.findIndex(
      (each, at) => at > lines.indexOf('  frost:') && /white-b/.test(each),
    );
    const { markdown } = core.hover(PLAN, { line, character: lines[line]!.indexOf('K') - 2 })!;
    expect(markdown).toContain('half-orange, +81 mired');
    const rows = core.sheet(PLAN, { isWrittenOn: true }).shots[0]!.bench;
    expect(JSON.stringify(rows)).toContain('gels half-orange (+81 mired, 3850 K)');
  });
});

describe('a better recording mode', () => {
  const THIN = { 'shots/frost/record': 'thin-25' };
  const text = changed(withTwins('rime', 'thaw'), {
    ...THIN,
    'shots/rime/record': 'thin-25',
    'shots/thaw/record': 'thin-25',
  });

  it('is said once, on the first of its shots, and names the others', () => {
    const [found, ...more] = of('better-recording-mode', text);
    expect(more).toEqual([]);
    expect(found?.numbers).toEqual({ shots: 3 });
    expect(text.split('\n').indexOf('  frost:')).toBeLessThan(found!.range.start.line);
    expect(found!.range.start.line).toBeLessThan(text.split('\n').indexOf('  rime:'));
    expect(found?.why).toMatch(/The same goes for `rime` and `thaw`\.$/);
    expect(found?.related.map(({ words }) => words)).toEqual([
      '`record` of rime',
      '`record` of thaw',
    ]);
  });

  it('is chosen for all of them by one fix', () => {
    const core = coreWith(text);
    const found = core.findings(PLAN).find(({ rule }) => rule === 'better-recording-mode')!;
    const [fix, ...others] = core.fixesOf(found);
    expect(others).toEqual([]);
    expect(fix?.title).toBe('Record all 3 shots with full-25');
    expect(of('better-recording-mode', applied(text, fix!.edits))).toEqual([]);
  });

  it('passes over a shot that accepts its own', () => {
    const allow = '{ better-recording-mode: { because: the card is small } }';
    const accepted = changed(text, { 'shots/frost/allow': allow });
    const [found] = of('better-recording-mode', accepted);
    expect(found?.why).toMatch(/The same goes for `thaw`\.$/);
    const all = changed(text, { allow });
    expect(of('better-recording-mode', all)).toEqual([]);
    expect(of('allow-unused', all)).toEqual([]);
  });

  it('is another finding in another mode', () => {
    const modes = {
      'kit/bodies/body-a/recording-modes/thinner-25':
        '{ resolution: 1920 x 1080, rate: 25 fps, bitrate: 8 Mb/s, area: 36 x 20.25 mm }',
      'shots/thaw/record': 'thinner-25',
    };
    expect(of('better-recording-mode', changed(text, modes))).toHaveLength(2);
  });
});

describe('what nothing uses', () => {
  it('is a hint on its name, each once', () => {
    const found = of('unused-name', EXAMPLE_PLAN);
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(({ severity }) => severity === 'hint')).toBe(true);
    const lines = found.map((finding) => lineOf(EXAMPLE_PLAN, finding));
    expect(new Set(lines).size).toBe(lines.length);
    expect(lines).toContain('bulb:');
    expect(lines).not.toContain('panel:');
  });

  it('is not asked of a plan without shots, nor of a file that plans use', () => {
    const kit = EXAMPLE_PLAN.slice(0, EXAMPLE_PLAN.indexOf('\nshots:'));
    expect(of('unused-name', kit)).toEqual([]);
    const plan = `shootplan: 1\ntitle: x\nuse: [kit.shootplan.yaml]\n${EXAMPLE_PLAN.slice(kit.length)}`;
    const core = coreWith(plan, { 'kit.shootplan.yaml': kit });
    expect(core.figures(PLAN).size).toBe(2);
    const said = [...core.findings(PLAN), ...core.findings(`${ROOT}/kit.shootplan.yaml`)];
    expect(said.filter(({ rule }) => rule === 'unused-name')).toEqual([]);
  });
});

/** What each shot lacks, by the facts of the plan's one finding. */
function lacking(text: string): ReadonlyMap<string, readonly string[]> {
  const found = coreWith(text)
    .compared(PLAN)
    .findings.filter(({ rule }) => rule === 'check-missing');
  expect(found.length).toBeLessThanOrEqual(1);
  const { shots } = (found[0]?.facts ?? { shots: [] }) as {
    readonly shots: readonly { readonly shot: string; readonly checks: readonly string[] }[];
  };
  return new Map(shots.map(({ shot, checks }) => [shot, checks]));
}

describe('checks', () => {
  it('that are known are named where their rule is explained, and keep to the form of names', () => {
    const remedy = ruleNamed('check-missing')?.docs.remedy ?? '';
    expect(KNOWN_CHECKS.length).toBeGreaterThan(10);
    for (const { name, what } of KNOWN_CHECKS) {
      expect(name).toMatch(/^[a-z][a-z0-9-]*$/);
      expect(what).toMatch(/^[A-Z]/);
      expect(remedy).toContain(`\`${name}\` (`);
    }
    expect(new Set(KNOWN_CHECKS.map(({ name }) => name)).size).toBe(KNOWN_CHECKS.length);
  });

  const missing = (change: Readonly<Record<string, string | null>>, shot = 'frost') =>
    (lacking(changed(EXAMPLE_PLAN, change)).get(shot) ?? []).join(' ');

  // What each needs is common practice.
  it.each([
    ['move-rehearsed', { 'shots/frost/move': '{ kind: slide, speed: 0.1 mm/s }' }, 'frost'],
    [
      'focus-ends-marked',
      { 'shots/frost/move': '{ kind: focus-pull, from: 0.4 m, to: 0.5 m }' },
      'frost',
    ],
    ['solution-ready', { 'shots/skin/preflight/solution-ready': null }, 'skin'],
    ['lens-not-in-mirror', { 'shots/skin/preflight/lens-not-in-mirror': null }, 'skin'],
    ['background-clear', { 'shots/skin/preflight/background-clear': null }, 'skin'],
    ['mains-clear-of-liquid', { 'lights/strip/supply': 'mains' }, 'skin'],
    ['overhead-tethered', { 'lights/panel/overhead': 'yes' }, 'frost'],
    [
      'overhead-tethered',
      { 'shots/frost/light': '[bulb, panel]', 'lights/panel/overhead': 'yes' },
      'frost',
    ],
    ['overhead-tethered', { 'rigs/bench/support': '{ foot: 62 mm, overhead: yes }' }, 'frost'],
    // Common practice: what a boom carries hangs over something, so it gets a safety cable.
    [
      'overhead-tethered',
      { 'kit/stands/arm': '{ kind: boom }', 'lights/panel/stand': 'arm' },
      'frost',
    ],
    [
      'overhead-tethered',
      {
        'kit/stands/arm': '{ kind: boom }',
        'rigs/bench/support': '{ foot: 62 mm, stand: arm, reach: 1.2 m }',
      },
      'frost',
    ],
  ] as const)('%s is asked for by what the shot is', (check, change, shot) => {
    expect(missing({}, shot)).not.toContain(check);
    expect(missing(change, shot)).toContain(check);
  });

  it('are not called for by a light overhead that the shot does not use', () => {
    expect(missing({ 'lights/bulb/overhead': 'yes' })).not.toContain('overhead-tethered');
  });

  it.each([
    ['once', { 'preflight/once/move-rehearsed': 'open' }],
    ['for the shot', { 'shots/frost/preflight': '{ move-rehearsed: open }' }],
    [
      'for every shot',
      {
        'preflight/every-shot':
          '[focus-at-full-size, record-setting-read-back, exposure-confirmed, white-balance-fixed, flicker-checked, foot-balanced, move-rehearsed]',
      },
    ],
  ])('written %s are there', (_, change) => {
    const move = { 'shots/frost/move': '{ kind: slide, speed: 0.1 mm/s }' };
    expect(missing(move)).toContain('move-rehearsed');
    expect(missing({ ...move, ...change }).trim()).toBe('');
  });

  it('that are open once there are clips are said of that shot only', () => {
    const text = `${EXAMPLE_PLAN}\nclips: { skin: [{ file: media/0001.mp4 }] }\n`;
    expect(of('check-open', text).map(({ shot }) => shot)).toEqual(['skin']);
  });
});

describe('how long a film lasts', () => {
  const unlisted = {
    'subjects/soap': '{ kind: film, orientation: upright, size: 160 x 100 mm, holder: wire-frame }',
  };
  const asks = (change: Readonly<Record<string, string | null>>) =>
    of('not-known', changed(EXAMPLE_PLAN, change)).some(({ what, why }) =>
      `${what} ${why}`.includes('lifetime'),
    );

  it('is asked for where a take has to fit in and nothing tells', () => {
    expect(asks({ ...unlisted, 'shots/skin/take': '{ duration: 20 s }' })).toBe(true);
  });

  it('is not where the holder tells, or nothing is planned to last', () => {
    expect(asks({ 'shots/skin/take': '{ duration: 20 s }' })).toBe(false);
    expect(asks({ ...unlisted, 'shots/skin/take': null })).toBe(false);
  });
});

describe('what is missing', () => {
  const why = (change: Readonly<Record<string, string | null>>) =>
    of('not-known', changed(EXAMPLE_PLAN, change)).map((finding) => finding.why);

  it('is said with one or two of the figures that wait for it', () => {
    expect(why({ 'kit/bodies/body-a/recording-modes/full-25/rate': null })).toEqual([
      'It makes the shutter angle known.',
    ]);
    expect(why({ 'subjects/frost-plate/depth': null })).toEqual([
      'It makes the depth of field needed known.',
    ]);
    expect(why({ 'shots/frost/shutter': null })).toEqual([
      'It makes the exposure, the shutter angle and more known.',
    ]);
  });
});

describe('what is carried', () => {
  const BOOM =
    '\n    arm: { kind: boom, footprint: 1.1 m, reach: 1.2 m, mass: 6 kg, payload: 4 kg, counterweight: 2 kg, counterweight-arm: 500 mm }';
  const held = (measured: Readonly<Record<string, string>>): string =>
    changed(withTwins('rime', 'thaw'), {
      'kit/heads': '\n    ball: { payload: 2 kg, mass: 0.5 kg }',
      'kit/stands': BOOM,
      'rigs/bench/support': '{ head: ball, stand: arm, foot: 62 mm }',
      ...Object.fromEntries(
        Object.entries(measured).map(([shot, by]) => [`shots/${shot}/measured`, by]),
      ),
    });

  it('is judged by the shot in which it weighs most, whichever that is', () => {
    for (const shot of ['frost', 'rime', 'thaw']) {
      const text = held({ [shot]: '{ mass: 3 kg }' });
      const [head, ...others] = of('head-overloaded', text);
      expect(others).toEqual([]);
      expect(head).toMatchObject({ severity: 'error', numbers: { massKg: 3, payloadKg: 2 } });
      const [stand, ...more] = of('stand-overloaded', text);
      expect(more).toEqual([]);
      expect(stand?.numbers).toMatchObject({ massKg: 3.5 });
      // 3.5 kg, 650 mm past the edge of the footprint, against 6 kg 550 mm and 2 kg 1,050 mm inside.
      const [boom] = of('boom-may-tip', held({ [shot]: '{ mass: 12 kg }' }));
      expect(boom?.numbers?.stabilityFactor).toBeLessThan(1);
    }
  });

  // Moments about the edge of the footprint, by hand: 4.2 kg 900 mm outside, 7 kg 500 mm inside.
  it('is judged under a light too, by the light alone', () => {
    const lit = (arm: string, mass = '4.2 kg') =>
      changed(withTwins('rime'), {
        'kit/stands': `\n    arm: { kind: boom, footprint: 1 m, reach: 1.4 m, mass: 7 kg${arm} }`,
        'lights/panel/stand': 'arm',
        'lights/panel/mass': mass,
      });
    const [boom, ...others] = of('boom-may-tip', lit(''));
    expect(others).toEqual([]);
    expect(boom).toMatchObject({ severity: 'error' });
    expect(lineOf(lit(''), boom!)).toBe('stand: arm');
    expect(boom?.numbers?.stabilityFactor).toBeCloseTo((7 * 500) / (4.2 * 900), 6);
    expect(of('boom-may-tip', lit(', counterweight: 6 kg, counterweight-arm: 0.4 m'))).toEqual([]);
    const [load, ...more] = of('stand-overloaded', lit(', payload: 4 kg'));
    expect(more).toEqual([]);
    expect(load).toMatchObject({ severity: 'error', numbers: { massKg: 4.2, payloadKg: 4 } });
    expect(load?.what).toBe('panel weighs 4.2 kg; arm is rated for 4 kg.');
    expect(of('stand-overloaded', lit(', payload: 5 kg'))).toMatchObject([{ severity: 'note' }]);
    expect(of('stand-overloaded', lit(', payload: 6.1 kg'))).toEqual([]);
  });

  it('is no side effect of a fix that it was there before', () => {
    const held = changed(EXAMPLE_PLAN, {
      'kit/stands':
        '\n    spare: { kind: stand, payload: 3 kg }\n    post: { kind: boom, payload: 6 kg }',
      'lights/panel/stand': 'post',
      'lights/panel/mass': '4.5 kg',
      'shots/frost/iso': '200',
    });
    expect(of('stand-overloaded', held)).toMatchObject([{ severity: 'note' }]);
    const core = coreWith(held);
    const effects = core
      .findings(PLAN)
      .flatMap((finding) => core.fixesOf(finding))
      .map(({ title, sideEffects }) => `${title}: ${sideEffects}`);
    expect(effects.length).toBeGreaterThan(3);
    expect(effects.filter((effect) => effect.includes('the payload'))).toEqual([]);
  });

  it('is never said to be at its limit and below it', () => {
    const what = (mass: string) =>
      of(
        'boom-may-tip',
        changed(EXAMPLE_PLAN, {
          'kit/stands': '\n    arm: { kind: boom, footprint: 1 m, reach: 1.5 m, mass: 8 kg }',
          'lights/panel/stand': 'arm',
          'lights/panel/mass': mass,
        }),
      ).map((finding) => finding.what);
    expect(what('4.01 kg')).toEqual(['arm will tip over: stability factor 0.998 (below 1).']);
    expect(what('2.68 kg')).toEqual(['arm may tip over: stability factor 1.49 (below 1.5).']);
  });

  it('pitches by the shot in which it balances furthest off', () => {
    for (const shot of ['frost', 'rime', 'thaw']) {
      const found = of('rig-pitches', held({ [shot]: '{ balance: 110 mm }' }));
      expect(found.map(({ numbers }) => numbers)).toMatchObject([{ centreOfGravityMm: 110 }]);
    }
  });
});

describe('a focusing rail', () => {
  const on = (rail: string) =>
    changed(EXAMPLE_PLAN, {
      'kit/heads': '\n    ball: { payload: 2.2 kg, mass: 0.5 kg }',
      'kit/rails': '\n    slide: { travel: 150 mm, mass: 0.9 kg }',
      'rigs/bench/support': `{ head: ball${rail}, foot: 62 mm }`,
    });

  it('is carried by the head with the rig', () => {
    expect(of('head-overloaded', on(''))).toEqual([]);
    expect(of('head-overloaded', on(', rail: slide'))).toHaveLength(1);
    expect(
      of('unused-name', on(''))
        .map(({ what }) => what)
        .join(),
    ).toContain('slide');
    expect(of('unknown-name', on(', rail: slid'))).toHaveLength(1);
  });
});
