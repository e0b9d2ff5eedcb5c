/**
 * One mistake in a clean plan: it is found where it stands, by a rule of its kind, little else is said
 * because of it, and shots that don't follow from what it stands in come to the same as before.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import { planTemplate } from '../../shared/assist/template.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { CONVERTER_PLAN } from './support/converter-plan.ts';
import { defectsIn, KINDS, type Planted } from './support/defects.ts';
import { fieldsOf, namesBehind } from './support/fields.ts';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));

const samples = readdirSync(SAMPLES)
  .filter((name) => name.endsWith('.shootplan.yaml'))
  .map((name) => [name, readFileSync(`${SAMPLES}${name}`, 'utf8')] as const);

const coreOf = (text: string): Core => coreWith(text, Object.fromEntries(samples));

/**
 * With nothing wrong in it and nothing left out that matters; others are samples of what is found,
 * and where a sheet is silent a mistake may be no more than probable.
 */
const isSound = (text: string): boolean =>
  coreOf(text)
    .findings(PLAN)
    .every(({ severity, rule }) => severity !== 'error' && rule !== 'not-known');

const plans: readonly (readonly [name: string, text: string])[] = [
  ['a plan with a converter', CONVERTER_PLAN],
  ['the plan that people start from', planTemplate()],
  ['the examples’ plan', EXAMPLE_PLAN],
  ...samples.filter(([, text]) => isSound(text)),
];

/** All figures with their bounds take most of the time; the long run compares them every time. */
const COMPARED_EACH = process.env.LAMELLA_LONG === '1' ? 1 : 5;

/** Of one kind in one plan so many, from all over it; the long run plants them all. */
const MOST_PLANTED = process.env.LAMELLA_LONG === '1' ? Number.POSITIVE_INFINITY : 40;
const fromAllOver = <T>(all: readonly T[]): readonly T[] => {
  const each = Math.ceil(all.length / MOST_PLANTED);
  return each <= 1 ? all : all.filter((_, index) => index % each === 0);
};

const isSaid = ({ severity }: LocatedFinding): boolean => severity !== 'hint';

/** Offsets of a finding in a text. */
function spanIn(text: string, { range }: LocatedFinding): readonly [number, number] {
  const starts = [0];
  for (const { index } of text.matchAll(/\n/g)) starts.push(index + 1);
  const at = ({ line, character }: LocatedFinding['range']['start']) => starts[line]! + character;
  return [at(range.start), at(range.end)];
}

/** A plan without mistakes, and one core that they are planted in one after another. */
interface Bed {
  readonly core: Core;
  readonly was: readonly LocatedFinding[];
  readonly figures: ReturnType<Core['figures']>;
  readonly fields: ReturnType<typeof fieldsOf>;
}

const beds = new Map<string, Bed>();

function bedOf(plan: string): Bed {
  let bed = beds.get(plan);
  if (!bed) {
    const core = coreOf(plan);
    const was = core.findings(PLAN).filter(isSaid);
    bed = { core, was, figures: core.figures(PLAN), fields: fieldsOf(plan) };
    beds.set(plan, bed);
  }
  return bed;
}

function check({ text, spot, rules, entry }: Planted, plan: string, place: number): void {
  const { core, was, figures: wereFigures, fields } = bedOf(plan);
  core.give(PLAN, text);
  for (const file of core.wanted(PLAN)) core.refuse(file, 'not-found');
  const is = core.findings(PLAN);
  const follows = (shot: string): boolean =>
    entry === undefined || namesBehind(fields, shot).has(entry);

  const there = is.filter((finding) => {
    if (spot === null) return finding.shot !== undefined && follows(finding.shot);
    const [start, end] = spanIn(text, finding);
    return start <= spot[1] && end >= spot[0];
  });
  const bySaid = there.filter(({ rule }) => rules.includes(rule));
  expect(bySaid, `${rules} in ${there.map(({ rule }) => rule)}`).not.toEqual([]);
  // What several shots film is wrong in each of them, once.
  const suffering = new Set(bySaid.map(({ shot }) => shot)).size;
  expect(is.filter(isSaid).length, is.map(({ rule }) => rule).join()).toBeLessThanOrEqual(
    was.length + Math.max(2, suffering),
  );

  if (place % COMPARED_EACH !== 0) return;
  const areFigures = core.figures(PLAN);
  for (const [shot, figures] of wereFigures)
    if (!follows(shot)) expect(areFigures.get(shot), `figures of ${shot}`).toEqual(figures);
}

it('there are many, of every kind', () => {
  const all = plans.flatMap(([, text]) => defectsIn(text));
  expect(all.length).toBeGreaterThanOrEqual(150);
  for (const kind of Object.keys(KINDS)) {
    const count = all.filter((planted) => planted.kind === kind).length;
    expect(count, kind).toBeGreaterThanOrEqual(3);
  }
});

for (const [name, plan] of plans) {
  const defects = defectsIn(plan);
  for (const kind of Object.keys(KINDS)) {
    const planted = fromAllOver(defects.filter((defect) => defect.kind === kind));
    if (planted.length === 0) continue;
    describe(`${name}: ${kind}`, () => {
      it('each is told, and nothing else is', () => {
        each(
          planted,
          (defect) => check(defect, plan, defects.indexOf(defect)),
          ({ says }) => says,
        );
      });
    });
  }
}
