import { describe, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';

const ROOT = 'file:///w';
const A = `${ROOT}/a.shootplan.yaml`;
const B = `${ROOT}/b.shootplan.yaml`;
const KIT = `${ROOT}/kit.shootplan.yaml`;

const shots = EXAMPLE_PLAN.indexOf('\nshots:');
const kitAt = EXAMPLE_PLAN.indexOf('\nkit:');
const kit = `shootplan: 1\n${EXAMPLE_PLAN.slice(kitAt, shots)}`;
const plan = (uses = '[kit.shootplan.yaml]') =>
  `${EXAMPLE_PLAN.slice(0, kitAt)}\nuse: ${uses}\n${EXAMPLE_PLAN.slice(shots)}`;

function coreOf(files: Readonly<Record<string, string>>): Core {
  const core = createCore({ rootOf: () => ROOT });
  for (const [file, text] of Object.entries(files)) core.give(file, text);
  for (const file of Object.keys(files))
    for (const wanted of core.wanted(file)) core.refuse(wanted, 'not-found');
  return core;
}

const loud = (core: Core, file: string) =>
  core
    .findings(file)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule, severity }) => `${rule} ${severity}`);

describe('a kit that two plans use', () => {
  it('is read by both, and says nothing of its own', () => {
    const core = coreOf({ [A]: plan(), [B]: plan(), [KIT]: kit });
    expect([loud(core, A), loud(core, B), core.findings(KIT)]).toEqual([[], [], []]);
  });

  it('shows once what both plans miss in it, and less when one of them closes', () => {
    const core = coreOf({
      [A]: plan(),
      [B]: plan(),
      [KIT]: changed(kit, { 'kit/lenses/macro-100/length': null }),
    });
    const found = core.findings(KIT);
    expect(found.map(({ rule, range }) => [rule, range.start.line])).toEqual([
      ['not-known', kit.split('\n').findIndex((line) => line.includes('macro-100:'))],
    ]);
    core.close(B);
    expect(core.findings(KIT)).toHaveLength(1);
    core.close(A);
    expect(core.findings(KIT)).toEqual([]);
  });

  it('has nothing to say once it is closed', () => {
    const core = coreOf({ [A]: plan(), [KIT]: kit });
    core.findings(KIT);
    core.close(KIT);
    expect(core.findings(KIT)).toEqual([]);
  });

  it('changes the findings of both when it is edited', () => {
    const core = coreOf({ [A]: plan(), [B]: plan(), [KIT]: kit });
    const line = kit.split('\n').findIndex((each) => each.includes('aperture: f/2.8 to 32'));
    const end = kit.split('\n')[line]!.length;
    core.edit(KIT, { start: { line, character: end - 2 }, end: { line, character: end } }, '5.6');
    expect(loud(core, A)).toEqual(['aperture-not-on-lens error']);
    expect(loud(core, B)).toEqual(['aperture-not-on-lens error']);
  });

  it('may set severities for all its plans; a plan’s own word goes before', () => {
    const files = {
      [A]: `${changed(plan(), { 'shots/frost/iso': '3200' })}`,
      [KIT]: `${kit}\nseverity: { exposure-off: error }\n`,
    };
    expect(loud(coreOf(files), A)).toEqual(['exposure-off error']);
    const own = `${files[A]}\nseverity: { exposure-off: note }\n`;
    expect(loud(coreOf({ ...files, [A]: own }), A)).toEqual(['exposure-off note']);
  });
});

describe('what is used', () => {
  it('and isn’t there is one finding, however many names wait for it', () => {
    expect(loud(coreOf({ [A]: plan() }), A)).toEqual(['use-not-found error']);
  });

  it('and comes later makes its names known', () => {
    const core = createCore({ rootOf: () => ROOT });
    core.give(A, plan());
    expect(core.wanted(A)).toEqual([KIT]);
    expect(loud(core, A)).toEqual([]);
    core.give(KIT, kit);
    expect(core.wanted(A)).toEqual([]);
    expect(core.figures(A).get('frost')?.effectiveFNumber).toBeCloseTo(12.8, 6);
  });

  it.each([
    ['outside the workspace', '[../kit.shootplan.yaml]'],
    ['by no path', '["C:\\\\kit.shootplan.yaml"]'],
    ['itself', '[a.shootplan.yaml]'],
  ])('%s is refused where it is named', (_, uses) => {
    const core = coreOf({ [A]: plan(uses), [KIT]: kit });
    const [found] = core.findings(A).filter(({ rule }) => rule.startsWith('use-'));
    const line = plan(uses)
      .split('\n')
      .findIndex((each) => each.startsWith('use:'));
    expect(found?.severity).toBe('error');
    expect(found?.range.start.line).toBe(line);
  });

  it('in a circle is found in both files, and both are still read', () => {
    const core = coreOf({ [A]: plan(), [KIT]: `${kit}\nuse: [a.shootplan.yaml]\n` });
    expect(loud(core, A)).toEqual(['use-in-a-circle error']);
    expect(loud(core, KIT)).toEqual(['use-in-a-circle error']);
    expect(core.figures(A).get('frost')?.effectiveFNumber).toBeCloseTo(12.8, 6);
  });

  it.each(['not-text', 'too-large', 'unreadable', 'outside-workspace'] as const)(
    'and refused as %s says so',
    (why) => {
      const core = createCore({ rootOf: () => ROOT });
      core.give(A, plan());
      core.refuse(KIT, why);
      expect(loud(core, A)).toEqual(['use-not-found error']);
    },
  );
});

describe('a name defined twice', () => {
  it('in a plan and its kit is an error in the plan, with the first beside it', () => {
    const own = `${plan()}\nlights:\n  panel: { kind: led, modulation: none }\n`;
    const core = coreOf({ [A]: own, [KIT]: kit });
    const [found] = core.findings(A).filter(({ rule }) => rule === 'duplicate-name');
    expect(found?.related[0]?.file).toBe(KIT);
    expect(own.split('\n')[found!.range.start.line]).toContain('panel:');
  });

  it('in two kits is an error in the nearer of them', () => {
    const second = `shootplan: 1\nlights:\n  panel: { kind: led, modulation: none }\n`;
    const core = coreOf({
      [A]: plan('[second.shootplan.yaml, kit.shootplan.yaml]'),
      [KIT]: kit,
      [`${ROOT}/second.shootplan.yaml`]: second,
    });
    const found = core
      .findings(`${ROOT}/second.shootplan.yaml`)
      .filter(({ rule }) => rule === 'duplicate-name');
    expect(found.map(({ related }) => related[0]?.file)).toEqual([KIT]);
  });

  it('for two kinds of parts is an error, since rigs name parts by name alone', () => {
    const text = changed(EXAMPLE_PLAN, { 'kit/tubes/twice': '{ length: 5 mm }' });
    const core = coreOf({ [A]: text });
    const found = core.findings(A).filter(({ rule }) => rule === 'duplicate-name');
    expect(found.map(({ what }) => what)).toEqual(['twice is already the name of another part.']);
  });
});
