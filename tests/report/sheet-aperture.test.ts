/** The chart of the aperture: what it shades is where the plan, set so, has no finding of its limits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIMIT_RULES } from '../../shared/rules/aperture-sweep.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { PRECEDENCE } from '../../shared/rules/precedence.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';
import { documentOf, drawing, pageOf, sampleCore, samples } from './support/sheets.ts';

const RULES: ReadonlySet<string> = new Set(Object.values(LIMIT_RULES).map(({ name }) => name));
/** A finding that explains one of a limit takes its place. */
const OR_EXPLAINED: ReadonlySet<string> = new Set([
  ...RULES,
  ...Object.keys(PRECEDENCE).filter((rule) => PRECEDENCE[rule]!.some((one) => RULES.has(one))),
]);

/** Farther than the ends of a stretch are found, nearer than a third of a stop. */
const NEAR = 1.01;

const TITLE = 'Choice of aperture';

/** Findings on the limits of one shot with its aperture set otherwise. */
const foundAt = (plan: string, shot: string, marked: number, rules = RULES): readonly string[] =>
  sampleCore(changed(plan, { [`shots/${shot}/aperture`]: `f/${marked}` }))
    .findings(PLAN)
    .filter((one) => one.shot === shot && rules.has(one.rule))
    .map(({ rule }) => rule);

/** Stretches as the chart shades them, the same in each of its plots. */
function shaded(page: Document, shot: string): readonly (readonly [number, number])[] {
  const chart = drawing(page, shot, TITLE);
  const each = new Set(
    chart
      .all('[data-stretch=met]')
      .map((one) => `${one.getAttribute('data-from')} ${one.getAttribute('data-to')}`),
  );
  return [...each].map((ends) => ends.split(' ').map(Number) as [number, number]);
}

const charts = samples
  .filter(([name]) => !name.startsWith('workshop'))
  .flatMap(([name, plan]) => {
    const core = sampleCore(plan);
    const page = documentOf(pageOf(core));
    return [...core.figures(PLAN).keys()]
      .filter((shot) =>
        [...page.querySelectorAll('.shot')].some(
          (one) =>
            one.querySelector('h2')?.textContent === shot && one.querySelector('[data-panel]'),
        ),
      )
      .map((shot) => ({ name, plan, page, shot }));
  });

describe('the shaded stretch', () => {
  const tried = charts.slice(0, manyRuns(14));

  it('is drawn of most shots of the samples, and left empty of some', () => {
    const empty = charts.filter(({ page, shot }) => shaded(page, shot).length === 0);
    expect(charts.length).toBeGreaterThan(15);
    expect(empty.length).toBeGreaterThan(0);
    expect(empty.length).toBeLessThan(charts.length / 2);
    for (const { page, shot } of empty)
      expect(drawing(page, shot, TITLE).figure.textContent).toContain(
        'No aperture meets all limits.',
      );
  });

  it('holds no finding of its limits, and ends where one begins', () => {
    each(tried, ({ plan, page, shot }) => {
      for (const [from, to] of shaded(page, shot)) {
        const inside =
          from * NEAR < to / NEAR ? [from * 1.001, to / 1.001] : [Math.sqrt(from * to)];
        for (const marked of inside)
          expect(foundAt(plan, shot, marked), `${shot} f/${marked}`).toEqual([]);
        for (const marked of [from / 1.04, to * 1.04])
          expect(foundAt(plan, shot, marked, OR_EXPLAINED), `${shot} f/${marked}`).not.toEqual([]);
      }
    });
  });

  it('where it is empty, every mark has a finding', () => {
    const [first] = charts.filter(({ page, shot }) => shaded(page, shot).length === 0);
    const { plan, page, shot } = first!;
    const marks = drawing(page, shot, TITLE)
      .all('text')
      .flatMap(({ textContent }) =>
        /^\d+(\.\d)?$/.test(textContent!) ? [Number(textContent)] : [],
      )
      .filter((n) => n < 50);
    expect(marks.length).toBeGreaterThan(3);
    for (const marked of marks)
      expect(foundAt(plan, shot, marked, OR_EXPLAINED), `${shot} f/${marked}`).not.toEqual([]);
  });

  it('agrees with the findings of random plans', () => {
    fc.assert(
      fc.property(randomPlan(), ({ text }) => {
        const core = coreWith(text);
        const page = documentOf(pageOf(core));
        for (const section of page.querySelectorAll('.shot')) {
          if (!section.querySelector('[data-panel]')) continue;
          const shot = section.querySelector('h2')!.textContent!;
          for (const [from, to] of shaded(page, shot)) {
            const marked = Math.sqrt(from * to);
            expect(foundAt(text, shot, marked), `${shot} f/${marked}`).toEqual([]);
          }
        }
      }),
      { numRuns: manyRuns(8) },
    );
  });

  it('passes by what the plan accepts', () => {
    const open = coreWith(changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/4' }));
    const accepted = coreWith(
      changed(EXAMPLE_PLAN, {
        'shots/frost/aperture': 'f/4',
        'shots/frost/allow': '{ depth-short: { reason: the fall-off is wanted } }',
      }),
    );
    const least = (core: typeof open): number =>
      Math.min(...shaded(documentOf(pageOf(core)), 'frost').map(([from]) => from));
    expect(accepted.findings(PLAN).filter(({ rule }) => rule === 'depth-short')).toEqual([]);
    expect(least(accepted)).toBeLessThanOrEqual(least(open));
  });
});

describe('curves', () => {
  it('grow the depth in proportion to the f-number while geometry sets it', () => {
    // Common practice: at close range the depth of field is about 2·c·N·(1 + m/p)/m².
    const { page } = charts.find((one) => one.shot === 'bands-falling')!;
    const chart = drawing(page, 'bands-falling', TITLE);
    const lines = chart
      .all('[data-panel=depth] .grid')
      .map((one) => Number(one.getAttribute('y1')));
    const ticks = chart
      .all('[data-panel=depth] text')
      .map(({ textContent }) => Number.parseFloat(textContent!));
    expect(ticks).toHaveLength(2);
    const perUnit = Math.log(ticks[1]! / ticks[0]!) / (lines[0]! - lines[1]!);
    const points = chart.points('[data-curve=depth]');
    // From f/4 in third stops: three of them on is f/5.6.
    expect(Math.exp((points[0]![1] - points[3]![1]) * perUnit)).toBeCloseTo(5.6 / 4, 1);
  });

  it('cross the ISO that is set where the exposure is right', () => {
    const { page } = charts.find((one) => one.shot === 'bands-falling')!;
    const chart = drawing(page, 'bands-falling', TITLE);
    const set = chart.at('[data-level=set-iso]', 'y1');
    const iso = chart.points('[data-curve=iso]');
    const crossing = iso.findIndex(([, y]) => y < set);
    expect(crossing).toBeGreaterThan(0);
    const stretch = chart.all('[data-panel=iso] [data-stretch=met]')[0]!;
    const x = Number(stretch.getAttribute('x'));
    expect(iso[crossing]![0]).toBeGreaterThan(x - 1);
    expect(iso[crossing - 1]![0]).toBeLessThan(x + Number(stretch.getAttribute('width')));
  });
});

it('says that a stretch is met only since the plan accepts what it lacks', () => {
  const plan = changed(EXAMPLE_PLAN, {
    'shots/frost/aperture': 'f/4',
    'shots/frost/iso': 'auto',
    'shots/frost/allow': '{ depth-short: { reason: the fall-off is wanted } }',
  });
  const words = (text: string): string =>
    drawing(documentOf(pageOf(coreWith(text))), 'frost', TITLE).figure.textContent!;
  expect(words(plan)).toContain('The plan accepts too little depth of field.');
  expect(words(changed(plan, { 'shots/frost/allow': null }))).not.toContain('accepts');
});
