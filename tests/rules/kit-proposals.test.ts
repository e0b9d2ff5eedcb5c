/** Rigs that are proposed for a field out of reach: each, applied, reaches it, and says what it costs. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';

const KIT = {
  'kit/tubes/tube-12': '{ length: 12 mm, mass: 60 g }',
  'kit/close-up-lenses': '\n    plus-4: { power: 4 dpt, loss: 0 stops, mass: 60 g }',
};

function proposalsFor(text: string) {
  const core = coreWith(text);
  const finding = core.findings(PLAN).find(({ rule }) => rule === 'field-out-of-reach');
  return finding
    ? core.fixesOf(finding).filter(({ title }) => /^(Use rig|Build the rig|Add rig)/.test(title))
    : [];
}

describe('a field out of reach', () => {
  it.each(['30 mm', '22 mm', '18 mm', '15 mm', '12 mm', '10 mm'])('of %s', (field) => {
    const text = changed(EXAMPLE_PLAN, { ...KIT, 'shots/frost/field': field });
    const proposals = proposalsFor(text);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { title, edits } of proposals) {
      const after = coreWith(applied(text, edits));
      const rules = after.findings(PLAN).map(({ rule }) => rule);
      expect(rules, title).not.toContain('field-out-of-reach');
      const figures = after.figures(PLAN).get('frost')!;
      expect((figures.fieldMm as readonly number[])[0]).toBeCloseTo(Number.parseFloat(field), 0);
      const effective = /f\/([0-9.]+) effective/.exec(title);
      expect(Number(effective?.[1])).toBeCloseTo(figures.effectiveFNumber as number, 0);
    }
  });

  it('is offered the plan’s own rigs that reach it first, those that lose least light before others', () => {
    const text = changed(EXAMPLE_PLAN, { 'shots/frost/field': '24 mm' });
    const titles = proposalsFor(text).map(({ title }) => title);
    const standing = titles.filter((title) => title.startsWith('Use rig'));
    expect(standing).toEqual(titles.slice(0, standing.length));
    expect(standing.map((title) => /rig (\S+) \(/.exec(title)?.[1])).toContain('stacked');
    const lost = standing.map((title) => Number(/([0-9.]+) stops? lost/.exec(title)?.[1]));
    expect(lost).toEqual([...lost].sort((a, b) => a - b));
  });

  it('is told which filter of its rig another rig goes without', () => {
    const text = changed(EXAMPLE_PLAN, {
      'shots/frost/field': '24 mm',
      'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
      'rigs/bench/filters': '[polariser]',
    });
    const standing = proposalsFor(text).filter(({ title }) => title.startsWith('Use rig'));
    expect(standing.length).toBeGreaterThan(0);
    for (const { sideEffects } of standing) expect(sideEffects).toMatch(/^without `polariser`/);
    const bare = changed(text, { 'rigs/bench/filters': null });
    for (const { sideEffects } of proposalsFor(bare))
      expect(sideEffects ?? '').not.toMatch(/without/);
  });

  it('that nothing in the kit reaches has no proposal', () => {
    expect(proposalsFor(changed(EXAMPLE_PLAN, { 'shots/frost/field': '2 mm' }))).toEqual([]);
  });

  it('of a rig that other shots use too: a rig beside it, or the rig itself at a price', () => {
    const text = changed(EXAMPLE_PLAN, {
      ...KIT,
      'shots/skin/rig': 'bench',
      'shots/skin/field': '60 mm',
      'shots/frost/field': '22 mm',
    });
    const proposals = proposalsFor(text);
    const beside = proposals.find(({ title }) => title.startsWith('Add rig'));
    const itself = proposals.find(({ title }) => title.startsWith('Build the rig'));
    expect(beside!.title).toMatch(/^Add rig bench-closer with body-a \+ /);
    const after = coreWith(applied(text, beside!.edits));
    expect(after.figures(PLAN).get('skin')).toEqual(coreWith(text).figures(PLAN).get('skin'));
    expect(itself!.sideEffects).toMatch(/^1 other shot uses it/);
  });

  it('of a rig that another file has: never changed there', () => {
    const kit = EXAMPLE_PLAN.slice(EXAMPLE_PLAN.indexOf('kit:'), EXAMPLE_PLAN.indexOf('lights:'));
    const text = changed(
      EXAMPLE_PLAN.replace(kit, '').replace('mains:', 'use: [kit.shootplan.yaml]\nmains:'),
      {
        'shots/frost/field': '22 mm',
      },
    );
    const core = coreWith(text, { 'kit.shootplan.yaml': `shootplan: 1\n${kit}` });
    const finding = core.findings(PLAN).find(({ rule }) => rule === 'field-out-of-reach');
    const fixes = core.fixesOf(finding!);
    expect(fixes.map(({ title }) => title)).toContainEqual(
      expect.stringMatching(/^Add rig bench-closer with /),
    );
    for (const { edits } of fixes) for (const { file } of edits) expect(file).toBe(PLAN);
  });
});
