/** What a change does: silent on what says the same, its own mirror image when swapped. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Comparison, FindingsChange, PlanFinding } from '../../shared/api/compared.ts';
import { comparePlans, isSame } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { each } from '../support/each.ts';
import { withEdit } from '../support/edits.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { sampleCore, samples } from './support/sheets.ts';

const say = new Say();
const comparisonText = (comparison: Comparison): string =>
  terminalText(comparisonDocument(comparison, say, 'terminal'), false);
const comparisonMarkdown = (comparison: Comparison): string =>
  markdownText(comparisonDocument(comparison, say, 'page'));
const compared = (text: string) => coreWith(text).compared(PLAN);
const compare = (before: string, after: string) => comparePlans(compared(before), compared(after));
const change = (what: Readonly<Record<string, string | null>>) =>
  compare(EXAMPLE_PLAN, changed(EXAMPLE_PLAN, what));

describe('the edit', () => {
  const CUTS = ['one: { shot: skin, duration: 1 bar }', 'two: { shot: frost, duration: 2 bars }'];
  const before = withEdit(CUTS);

  it('is told by what follows: its length, and the cuts that move', () => {
    const after = withEdit([CUTS[0]!.replace('1 bar', '2 bars'), CUTS[1]!]);
    const { edit } = compare(before, after);
    expect(edit.map(({ figure, before: was, after: is }) => [figure, was, is])).toEqual([
      ['totalFrames', 200, 267],
      ['totalTimecode', '00:00:08:00', '00:00:10:17'],
      ['cuts.one.durationFrames', 67, 133],
      ['cuts.one.sourceS', 2.66666667, 5.33333333],
      ['cuts.two.startFrame', 67, 133],
      ['cuts.two.durationFrames', 133, 134],
      ['cuts.two.fromBeatFrames', 0.333333333, -0.333333333],
    ]);
    const text = comparisonText(compare(before, after));
    expect(text).toContain('edit\n  length of the edit');
    expect(text).toMatch(/two: begins at frame +67 → 133/);
    expect(comparisonMarkdown(compare(before, after))).toContain(
      '| length of the edit | 200 frames | 267 frames |',
    );
  });

  it('says why a length is not known', () => {
    const after = withEdit([CUTS[0]!.replace(', duration: 1 bar', ''), CUTS[1]!]);
    const [total] = compare(before, after).edit;
    expect(total).toMatchObject({
      figure: 'totalFrames',
      after: null,
      notKnown: { after: 'needs `duration` of one' },
    });
  });

  it('that comes or goes is told whole, and the same one not at all', () => {
    expect(compare(EXAMPLE_PLAN, before).edit.length).toBeGreaterThan(10);
    expect(compare(before, before).edit).toEqual([]);
  });
});

it('what is found in no single shot stands under its own heading, not under the last shot', () => {
  const comparison = change({ 'kit/lenses/macro-100/length': null });
  const missing = 'Give `length` of `macro-100` next: 1 shot waits for it.';
  expect(comparisonText(comparison)).toContain(
    `\n\nfindings about no single shot\n  new note: ${missing}  not-known\n`,
  );
  expect(comparisonMarkdown(comparison)).toContain(
    '\n\n### Findings about no single shot\n\n- **new** note: ',
  );
});

describe('nothing is said of plans that say the same', () => {
  it('any sample and itself', () => {
    each(samples, ([_, text]) => {
      const comparison = comparePlans(
        sampleCore(text).compared(PLAN),
        sampleCore(text).compared(PLAN),
      );
      expect(isSame(comparison)).toBe(true);
      expect(comparisonText(comparison)).toBe('The plans are identical.\n');
    });
  });

  it.each([
    [
      'comments and blank lines',
      (text: string) => `# by hand\n\n${text.replace('shots:', '\n# the shots\nshots:')}`,
    ],
    ['another spelling of a length', (text: string) => text.replace('field: 60 mm', 'field: 6 cm')],
    ['another spelling of a size', (text: string) => text.replaceAll('1920 x 1080', '1920x1080')],
    ['quotes', (text: string) => text.replace('title: Winter Window', "title: 'Winter Window'")],
    ['CRLF', (text: string) => text.replaceAll('\n', '\r\n')],
    [
      'a record in block style',
      (text: string) =>
        text.replace(
          '    take: { duration: 20 s, settle: 5 s }',
          '    take:\n      duration: 20 s\n      settle: 5 s',
        ),
    ],
    [
      'keys in another order',
      (text: string) =>
        text.replace(
          '    aperture: f/8\n    shutter: 1/50 s\n    iso: 1250',
          '    iso: 1250\n    shutter: 1/50 s\n    aperture: f/8',
        ),
    ],
  ])('%s', (_, edit) => {
    const edited = edit(EXAMPLE_PLAN);
    expect(edited).not.toBe(EXAMPLE_PLAN);
    expect(isSame(compare(EXAMPLE_PLAN, edited))).toBe(true);
  });
});

describe('what follows from a change', () => {
  it('an aperture closed by a stop: depth, exposure, a finding', () => {
    const { shots, entries, sameShots } = change({ 'shots/frost/aperture': 'f/11' });
    expect([entries, sameShots]).toEqual([[], 1]);
    const [shot] = shots;
    expect(shot).toMatchObject({
      shot: 'frost',
      state: 'changed',
      fields: [{ path: 'aperture', before: 'f/8', after: 'f/11' }],
    });
    const figure = (name: string) => shot!.figures.find((one) => one.figure === name)!;
    // 2·log2(11/8) = 0.919 stops less light; f-number and magnification alone decide the rest.
    const exposure = figure('exposureErrorStops');
    expect((exposure.before as number) - (exposure.after as number)).toBeCloseTo(
      2 * Math.log2(11 / 8),
      9,
    );
    const n = figure('effectiveFNumber');
    expect((n.after as number) / (n.before as number)).toBeCloseTo(11 / 8, 9);
    expect(shot!.findings.new.map(({ rule }) => rule)).toEqual(['exposure-off']);
    const text = comparisonText({
      entries,
      shots,
      sameShots,
      edit: [],
      findings: { gone: [], new: [], changed: [] },
    });
    expect(text).toContain('aperture  f/8 → f/11');
    expect(text).toMatch(/depth of field +\S+ mm \(.*\) → \S+ mm \(.*\)/);
    expect(text).toContain('new warning: ');
  });

  it('a light moved: told of the light, and of every shot that it lights', () => {
    const { shots, entries } = change({ 'lights/strip/luminance': '3000 cd/m2' });
    expect(entries).toMatchObject([
      {
        entry: 'lights/strip',
        fields: [{ path: 'luminance', before: '12000 cd/m2', after: '3000 cd/m2' }],
      },
    ]);
    expect(shots.map(({ shot, fields }) => [shot, fields])).toEqual([['skin', []]]);
    // A quarter of the light is two stops less.
    const exposure = shots[0]!.figures.find(({ figure }) => figure === 'exposureErrorStops')!;
    expect((exposure.after as number) - (exposure.before as number)).toBeCloseTo(-2, 9);
  });

  it('a key taken out says so, and why a figure is not known any more', () => {
    const { shots } = change({ 'shots/frost/shutter': null });
    expect(shots[0]).toMatchObject({
      fields: [{ path: 'shutter', before: '1/50 s', after: null }],
    });
    const exposure = shots[0]!.figures.find(({ figure }) => figure === 'exposureErrorStops')!;
    expect(exposure).toMatchObject({
      after: null,
      notKnown: { after: 'needs `shutter` of frost' },
    });
  });

  it('a finding that stays with other numbers is not new', () => {
    const dark = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '400' });
    const darker = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '200' });
    const [shot] = compare(dark, darker).shots;
    expect(shot!.findings).toMatchObject({ gone: [], new: [] });
    expect(shot!.findings.changed.map(({ after }) => after.rule)).toEqual(['exposure-off']);
  });

  it('new and gone shots are named, without a list of all that they say', () => {
    const without = EXAMPLE_PLAN.replace(/ {2}frost:\n(?: {4}.*\n)+/, '');
    const gone = compare(EXAMPLE_PLAN, without);
    expect(gone.shots.map(({ shot, state }) => [shot, state])).toContainEqual(['frost', 'gone']);
    const come = compare(without, EXAMPLE_PLAN);
    expect(come.shots.map(({ shot, state }) => [shot, state])).toContainEqual(['frost', 'new']);
  });
});

describe('a finding is known by its rule, its place and its facts', () => {
  const finding = (more: Partial<PlanFinding> = {}): PlanFinding => ({
    rule: 'depth-short',
    severity: 'warning',
    what: 'Depth is 2 mm.',
    place: ['shots', 'frost', 'aperture'],
    facts: { depthMm: 2, subject: 'ice' },
    ...more,
  });
  const plan = (...findings: readonly PlanFinding[]) => ({ ...compared(EXAMPLE_PLAN), findings });
  const between = (before: PlanFinding, after: PlanFinding) =>
    comparePlans(plan(before), plan(after)).findings;
  const NOTHING = { gone: [], new: [], changed: [] };
  const said = ({ rule, severity, what }: PlanFinding) => ({ rule, severity, what });

  it('and not by its words', () => {
    expect(between(finding(), finding({ what: 'The depth is 2 mm.' }))).toEqual(NOTHING);
  });

  it('nor by how a number was rounded', () => {
    const facts = { depthMm: 2 * (1 + 1e-12), subject: 'ice' };
    expect(between(finding(), finding({ facts }))).toEqual(NOTHING);
  });

  it.each([
    ['other facts', { facts: { depthMm: 1.9, subject: 'ice' } }],
    ['another place', { place: ['shots', 'skin', 'aperture'] }],
  ])('%s are a change, though it says the same; no reader is told of it', (_, more) => {
    const comparison = comparePlans(plan(finding()), plan(finding(more)));
    expect(comparison.findings).toEqual({
      ...NOTHING,
      changed: [{ before: said(finding()), after: said(finding(more)) }],
    });
    expect(comparisonText(comparison)).not.toContain('depth-short');
  });

  it('the same place comes before the same rule', () => {
    const one = finding({ place: ['shots', 'a'], what: 'a', facts: 1 });
    const two = finding({ place: ['shots', 'b'], what: 'b', facts: 1 });
    const after = [
      { ...two, what: 'b now', facts: 2 },
      { ...one, what: 'a now', facts: 2 },
    ];
    const { changed } = comparePlans(plan(one, two), plan(...after)).findings;
    expect(changed.map(({ before, after: is }) => [before.what, is.what])).toEqual([
      ['b', 'b now'],
      ['a', 'a now'],
    ]);
  });

  it('another rule is another finding', () => {
    const other = finding({ rule: 'motion-blur' });
    expect(between(finding(), other)).toEqual({
      ...NOTHING,
      gone: [said(finding())],
      new: [said(other)],
    });
  });
});

describe('renames', () => {
  it('a shot under another name is the same shot', () => {
    const { shots } = compare(EXAMPLE_PLAN, EXAMPLE_PLAN.replace('  frost:\n', '  rime:\n'));
    expect(shots).toMatchObject([
      { shot: 'rime', state: 'changed', before: 'frost', fields: [], figures: [] },
    ]);
  });

  it('of a rig and a light, in what names them, is no change of the shot', () => {
    const after = EXAMPLE_PLAN.replaceAll(/\bfar\b/g, 'far-off').replaceAll(/\bstrip\b/g, 'wall');
    const { shots, entries } = compare(EXAMPLE_PLAN, after);
    expect(shots).toEqual([]);
    expect(entries.map(({ entry, before, fields }) => [entry, before, fields])).toEqual([
      ['lights/wall', 'strip', []],
      ['rigs/far-off', 'far', []],
    ]);
  });

  it('with a change on the way', () => {
    const after = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/11' }).replace(
      '  frost:\n',
      '  rime:\n',
    );
    const [shot] = compare(EXAMPLE_PLAN, after).shots;
    expect(shot).toMatchObject({
      before: 'frost',
      fields: [{ path: 'aperture', before: 'f/8', after: 'f/11' }],
    });
  });

  it('of two things that have little in common are two things', () => {
    const after = changed(EXAMPLE_PLAN, {
      'shots/frost/subject': 'soap',
      'shots/frost/rig': 'far',
      'shots/frost/field': '33 mm',
      'shots/frost/aperture': 'f/16',
      'shots/frost/iso': '3200',
      'shots/frost/light': '[strip]',
      'shots/frost/shutter': '1/25 s',
    }).replace('  frost:\n', '  other:\n');
    const states = compare(EXAMPLE_PLAN, after).shots.map(({ shot, state }) => `${shot} ${state}`);
    expect(states).toEqual(expect.arrayContaining(['other new', 'frost gone']));
  });
});

const mirrored = ({ gone, new: come, changed: still }: FindingsChange): FindingsChange => ({
  gone: come,
  new: gone,
  changed: still.map(({ before, after }) => ({ before: after, after: before })),
});

const swappedFigures = (figures: Comparison['edit']): Comparison['edit'] =>
  figures.map(({ figure, before, after, notKnown, bounds, width }) => ({
    figure,
    ...(bounds && { bounds: { before: bounds.after, after: bounds.before } }),
    ...(width && { width: width === 'wider' ? 'narrower' : 'wider' }),
    before: after,
    after: before,
    notKnown: {
      ...(notKnown.after !== undefined && { before: notKnown.after }),
      ...(notKnown.before !== undefined && { after: notKnown.before }),
    },
  }));

/** The comparison as it would be from the other side, in an order of its own. */
function mirror({ entries, shots, edit, findings, sameShots }: Comparison) {
  const swapped = { new: 'gone', gone: 'new', changed: 'changed' } as const;
  const fields = (list: Comparison['entries'][number]['fields']) =>
    list.map(({ path, before, after }) => ({ path, before: after, after: before }));
  return canonical({
    sameShots,
    edit: swappedFigures(edit),
    findings: mirrored(findings),
    entries: entries.map((entry) => ({
      ...entry,
      state: swapped[entry.state],
      fields: fields(entry.fields),
    })),
    shots: shots.map((shot) => ({
      ...shot,
      state: swapped[shot.state],
      fields: fields(shot.fields),
      figures: swappedFigures(shot.figures),
      findings: mirrored(shot.findings),
    })),
  });
}

/** Lists in the order of their words: which comes first depends on the side. */
function canonical(comparison: Comparison): unknown {
  const sorted = <T>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  const findings = ({ gone, new: come, changed: still }: FindingsChange) => ({
    gone: sorted(gone),
    new: sorted(come),
    changed: sorted(still),
  });
  return {
    ...comparison,
    findings: findings(comparison.findings),
    entries: sorted(
      comparison.entries.map((entry) => ({ ...entry, fields: sorted(entry.fields) })),
    ),
    shots: sorted(
      comparison.shots.map((shot) => ({
        ...shot,
        fields: sorted(shot.fields),
        // Which value lies inside the other's bounds is another question from the other side.
        figures: sorted(shot.figures.map(({ insideBounds: _, ...figure }) => figure)),
        findings: findings(shot.findings),
      })),
    ),
  };
}

it('swapped, a comparison is its own mirror image', () => {
  fc.assert(
    fc.property(randomPlan(), randomPlan(), (a, b) => {
      expect(mirror(compare(a.text, b.text))).toEqual(canonical(compare(b.text, a.text)));
      expect(isSame(compare(a.text, a.text))).toBe(true);
    }),
    { numRuns: 30 },
  );
});

it('what a hostile plan says is inert in text and Markdown', () => {
  const hostile = changed(EXAMPLE_PLAN, {
    'shots/frost/about': '"<script>x</script> \\u202e \\u001b[31m [a](http://x) | b"',
  });
  const comparison = compare(EXAMPLE_PLAN, hostile);
  const active = /(?!\n)[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;
  expect(comparisonText(comparison)).not.toMatch(active);
  const markdown = comparisonMarkdown(comparison);
  expect(markdown).not.toMatch(active);
  expect(markdown).not.toMatch(/(^|[^\\])<script|(^|[^\\])\[a\]\(/);
});
