/** How sure figures are, in what is printed: sheet, comparison, reports; and rough values in them. */
import { describe, expect, it } from 'vitest';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { githubReport } from '../../shared/report/github.ts';
import { checkReport, compareReport } from '../../shared/report/json.ts';
import { Redactor } from '../../shared/report/redact/redact.ts';
import { sarifReport } from '../../shared/report/sarif.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { Say } from '../../shared/say/say.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { SHEET_PLAN, SURE } from '../support/sheet-plan.ts';
import { documentOf, pageOf } from './support/sheets.ts';

const say = new Say();
const GIVEN = changed(SHEET_PLAN, SURE);

/** Every form in which a value is written roughly. */
const ROUGH = changed(SHEET_PLAN, {
  'kit/lenses/macro-90/focal-length': '90 mm ± 2 %',
  'kit/lenses/macro-90/loss': '0.3 ± 0.1 stops',
  'lights/panel/illuminance': '2200 lx +/- 10 %',
  'subjects/ball/diameter': '50 to 80 mm',
});

const compare = (before: string, after: string) =>
  comparePlans(coreWith(before).compared(PLAN), coreWith(after).compared(PLAN));
const change = (what: Readonly<Record<string, string | null>>, from = SHEET_PLAN) =>
  compare(from, changed(from, what));
type Comparison = ReturnType<typeof compare>;
const textOf = (comparison: Comparison): string =>
  terminalText(comparisonDocument(comparison, say, 'terminal'), false);
const pageTextOf = (comparison: Comparison): string =>
  markdownText(comparisonDocument(comparison, say, 'page'));
const figureOf = ({ shots: [shot] }: Comparison, name: string) =>
  shot!.figures.find(({ figure }) => figure === name)!;

describe('a sheet', () => {
  const tile = (text: string, label: string): readonly string[] => {
    const page = documentOf(pageOf(coreWith(text)));
    const found = [...page.querySelectorAll('.setting')].find(
      (one) => one.querySelector('dt')?.textContent === label,
    )!;
    return [...found.querySelectorAll('dd')].map(({ textContent }) =>
      (textContent ?? '').replaceAll('\u00a0', ' '),
    );
  };

  it('shows how sure its figures are, behind them or in the line below', () => {
    expect(tile(SHEET_PLAN, 'Aperture')[1]).toMatch(/^f\/16 effective \(\d+ to \d+\)$/);
    expect(tile(SHEET_PLAN, 'ISO')[1]).toMatch(/\(.* to .*\)$/);
    const [value, note] = tile(SHEET_PLAN, 'Working distance');
    expect(value).toMatch(/^\d+ mm$/);
    expect(note).toMatch(/^\(\d+ to \d+\), \d+ mm to the sensor$/);
  });

  it('shows nothing round what is given', () => {
    expect(tile(GIVEN, 'Working distance')[1]).toMatch(/^\d+ mm to the sensor$/);
    expect(tile(SHEET_PLAN, 'Field')[0]).toBe('80 × 45 mm');
  });

  it('shows a written range as one, and says how long a film lasts roughly', () => {
    const text = changed(SHEET_PLAN, { 'shots/globe/tilt': '4 to 8 deg' });
    expect(tile(text, 'Tilt')).toEqual(['6°', '4 to 8°, subject leans back']);
    const markdown = markdownText(sheetDocument(coreWith(text).sheet(PLAN), say));
    expect(markdown).toContain('1 to 5 mm/s');
    expect(markdown).toContain('The film usually lasts 90 s (60 to 120).');
    expect(markdown).toMatch(/No margin for focus: \S+ mm \(\S+ to \S+\) depth of field/);
  });

  it.each([
    ['40 s', 'The take ends just as it usually bursts.'],
    ['30 s', 'The take ends 10 s before it usually bursts.'],
    ['50 s', 'The take ends 10 s after it usually bursts.'],
  ])('says of a take of %s on a film of 40 s: %s', (duration, words) => {
    const text = changed(EXAMPLE_PLAN, { 'shots/skin/take': `{ duration: ${duration} }` });
    expect(markdownText(sheetDocument(coreWith(text).sheet(PLAN), say))).toContain(words);
  });
});

describe('a comparison', () => {
  it('says that a change lies inside the bounds that the figure had', () => {
    const comparison = change({ 'kit/lenses/macro-90/pupil-ratio': '1.1' });
    const { before, after, bounds, insideBounds, width } = figureOf(comparison, 'effectiveFNumber');
    expect([insideBounds, width]).toEqual([true, 'narrower']);
    const [low, high] = bounds!.before as readonly [number, number];
    expect(after).not.toBe(before);
    expect(after).toBeGreaterThan(low);
    expect(after).toBeLessThan(high);
    const row =
      /effective f-number +f\/16 \(\d+ to \d+\) → f\/15 \(\d+ to \d+\), inside its bounds/;
    expect(textOf(comparison)).toMatch(row);
    expect(pageTextOf(comparison)).toMatch(
      /\| effective f-number \| f\/16 \(\d+ to \d+\) \| f\/15 \(\d+ to \d+\), inside its bounds \|/,
    );
    const json = JSON.parse(compareReport('a', 'b', comparison)) as Comparison;
    expect(figureOf(json, 'effectiveFNumber')).toMatchObject({ insideBounds: true, bounds });
  });

  it('does not say so of what lies outside', () => {
    const comparison = change({ 'shots/globe/aperture': 'f/5.6' });
    expect(figureOf(comparison, 'effectiveFNumber').insideBounds).toBeUndefined();
    expect(textOf(comparison)).toMatch(/→ f\/8\.1 \(\S+ to \S+\)$/m);
  });

  it('tells bounds that change alone: narrower one way, wider the other', () => {
    // The middle of what is assumed of a lens's glass, given: nothing moves but the bounds.
    const given = changed(SHEET_PLAN, { 'kit/lenses/macro-90/loss': '0.3 stops' });
    const there = compare(SHEET_PLAN, given);
    expect(figureOf(there, 'exposureErrorStops')).toMatchObject({ width: 'narrower' });
    expect(textOf(there)).toMatch(/exposure +(\S+ stops) \(.*\) → \1 \(.*\), narrower$/m);
    const back = compare(given, SHEET_PLAN);
    expect(figureOf(back, 'exposureErrorStops')).toMatchObject({ width: 'wider' });
    expect(pageTextOf(back)).toMatch(/\| exposure \| .* \| .*, wider \|/);
    // The f-number doesn't follow from what the glass takes.
    expect(figureOf(there, 'effectiveFNumber')).toBeUndefined();
  });

  it('shows a written range that changes as a range, and what follows', () => {
    const comparison = change({ 'subjects/ball/diameter': '55 to 65 mm' });
    expect(textOf(comparison)).toContain('diameter  60 mm → 55 to 65 mm');
    expect(figureOf(comparison, 'depthMm.needed')).toMatchObject({ width: 'wider' });
    const other = compare(
      changed(SHEET_PLAN, { 'subjects/ball/diameter': '55 to 65 mm' }),
      changed(SHEET_PLAN, { 'subjects/ball/diameter': '50 to 70 mm' }),
    );
    expect(pageTextOf(other)).toContain('| diameter | 55 to 65 mm | 50 to 70 mm |');
  });

  it('says nothing of plans that say the same', () => {
    expect(compare(ROUGH, ROUGH).shots).toEqual([]);
    const spelt = ROUGH.replace('2200 lx +/- 10 %', '2200 lx ± 10 %');
    expect(compare(ROUGH, spelt)).toMatchObject({ shots: [], entries: [] });
  });
});

describe('rough values pass unharmed through', () => {
  const files = () => {
    const core = coreWith(ROUGH);
    return [
      {
        name: 'plan.shootplan.yaml',
        findings: core.findings(PLAN).map((finding) => ({ finding, fixes: core.fixesOf(finding) })),
        nameOf: () => 'plan.shootplan.yaml',
      },
    ];
  };
  const rules = coreWith(ROUGH)
    .findings(PLAN)
    .map(({ rule }) => rule);

  it('a redacted plan: the ranges stay, and the same is found in it', () => {
    const redacted = new Redactor().text(ROUGH);
    for (const range of [
      '90 mm ± 2 %',
      '0.3 ± 0.1 stops',
      '2200 lx +/- 10 %',
      '50 to 80 mm',
      '60 to 120 s',
      '1 to 5 mm/s',
    ])
      expect(redacted).toContain(range);
    expect(redacted).not.toContain('macro-90');
    const found = coreWith(redacted).findings(PLAN);
    expect(found.map(({ rule }) => rule)).toEqual(rules);
    // Figures are those of the plan as it was.
    const numbers = (text: string) =>
      [...coreWith(text).figures(PLAN).values()].map(({ bounds }) => bounds);
    expect(numbers(redacted)).toEqual(numbers(ROUGH));
  });

  it('the JSON and SARIF of a check: each finding with its place, and the usual spelling as a fix', () => {
    const json = JSON.parse(checkReport(files())) as ReturnType<typeof JSON.parse>;
    const spelling = json.files[0].findings.find(
      ({ rule }: { rule: string }) => rule === 'usual-spelling',
    );
    expect(spelling.message).toContain('2200 lx ± 10 %');
    const sarif = JSON.parse(sarifReport(files(), ALL_RULES, '1.0.0'));
    const results = sarif.runs[0].results as readonly { ruleId: string }[];
    const heard = coreWith(ROUGH)
      .findings(PLAN)
      .filter(({ severity }) => severity !== 'hint');
    expect(results.map(({ ruleId }) => ruleId)).toEqual(heard.map(({ rule }) => rule));
    expect(heard.map(({ rule }) => rule)).toContain('depth-short');
    expect(JSON.stringify(sarif)).not.toMatch(/NaN|undefined|\[object/);
  });

  it('workflow commands: a line for each finding that is no hint', () => {
    const lines = githubReport(files()).trim().split('\n');
    const heard = coreWith(ROUGH)
      .findings(PLAN)
      .filter(({ severity }) => severity !== 'hint');
    expect(lines).toHaveLength(heard.length);
    for (const line of lines) expect(line).toMatch(/^::(error|warning|notice) /);
  });

  it('a solved shot: what was written roughly is left as it was', () => {
    const solved = coreWith(ROUGH).solve(PLAN, 'globe');
    expect(JSON.stringify(solved)).not.toMatch(/NaN|undefined|\[object/);
    expect(solved).not.toBeNull();
  });
});
