/** What the catalogue says of each figure is so. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, DECLARATIONS, KEPT_INSIDE } from '../../shared/figures/catalogue/catalogue.ts';
import { isNumber } from '../../shared/figures/catalogue/say-figure.ts';
import type { Shape } from '../../shared/figures/catalogue/shape.ts';
import { doesNotApply } from '../../shared/figures/reasons.ts';
import type { ShotFigures } from '../../shared/figures/shot-figures.ts';
import { boomMayTip } from '../../shared/rules/boom-may-tip.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES, SHOT_RULES } from '../../shared/rules/registry.ts';
import { UNITS } from '../../shared/say/units.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN, ROOT } from '../support/plans.ts';

const SAMPLES = new URL('../../samples/', import.meta.url);
const BUBBLE = '{ kind: bubble, diameter: 60 mm, lifetime: 20 s }';

const plans: readonly string[] = [
  EXAMPLE_PLAN,
  changed(EXAMPLE_PLAN, { 'subjects/soap': BUBBLE }),
  changed(EXAMPLE_PLAN, { 'shots/frost/move': '{ kind: focus-pull, from: 0.6 m, to: 0.35 m }' }),
  changed(EXAMPLE_PLAN, { 'shots/frost/move': '{ kind: slide, speed: 1 mm/s }' }),
  changed(EXAMPLE_PLAN, boomMayTip.docs.bad[0]!.change),
  EXAMPLE_PLAN.replace('orientation: upright', 'orientation: level'),
  ...readdirSync(SAMPLES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(new URL(name, SAMPLES), 'utf8')),
];
const shots = plans.flatMap((plan) => [...coreWith(plan).figures(PLAN).values()]);

it('has the unit of a number at the end of its key', () => {
  const units = ({ is }: { readonly is: Shape }) =>
    is.kind === 'number' || is.kind === 'pair' ? [UNITS[is.unit].ending] : [];
  each(
    [...DECLARATIONS],
    ([name, declared]) => {
      for (const ending of units(declared))
        expect(name.split('.')[0]!.toLowerCase()).toMatch(new RegExp(`${ending.toLowerCase()}$`));
    },
    ([name]) => name,
  );
});

it('declares as a number what is one in every plan', () => {
  for (const figures of shots)
    for (const [key, entry] of CATALOGUE)
      if (entry.kind === 'figure' && figures[key] !== null)
        expect(['number', 'string'].includes(typeof figures[key]), key).toBe(
          isNumber(entry) || entry.is.kind === 'word',
        );
});

describe('what applies to few', () => {
  const without = new Set(
    shots.flatMap(({ notKnown }) =>
      Object.keys(notKnown).filter((name) => doesNotApply(notKnown, name)),
    ),
  );
  const declared = [...DECLARATIONS].flatMap(([name, { only }]) => (only ? [name] : []));

  it('is what is ever said not to apply', () => {
    expect([...without].sort()).toEqual(declared.sort());
  });

  it('is there where it applies', () => {
    const seen = new Set(shots.flatMap((its) => declared.filter((name) => its[name] !== null)));
    expect([...seen].sort()).toEqual(declared.sort());
  });
});

/** Each rule about a shot with the figures that it reads, over all rules' examples. */
function figuresRead(): ReadonlyMap<string, ReadonlySet<string>> {
  const read = new Map(SHOT_RULES.map(({ name }) => [name, new Set<string>()]));
  const changes = SHOT_RULES.flatMap(({ docs }) => [...docs.bad, ...docs.good]);
  for (const change of [...changes.map((one) => one.change), { 'shots/frost/iso': 'auto' }]) {
    const store = new Store();
    const analysis = new Analysis(store, { rootOf: () => ROOT });
    store.give(PLAN, changed(EXAMPLE_PLAN, change));
    for (const id of analysis.shots(PLAN)) {
      const [bench, figures] = [analysis.bench(PLAN, id), analysis.figures(PLAN, id)];
      if (!bench || !figures) continue;
      for (const rule of SHOT_RULES) {
        const seen = new Proxy(figures, {
          get(target, key) {
            read.get(rule.name)!.add(String(key));
            return target[key as keyof ShotFigures];
          },
        });
        rule.check({ bench, figures: seen });
      }
    }
  }
  return read;
}

it('names rules that decide by a figure, and read it', () => {
  const read = figuresRead();
  const names = ALL_RULES.map(({ name }) => name);
  for (const [key, entry] of CATALOGUE) {
    const all = entry.kind === 'figure' ? [entry] : Object.values(entry.parts);
    for (const rule of all.flatMap(({ rules = [] }) => rules)) {
      expect(names, key).toContain(rule);
      // Rules about the whole plan read what carries the rigs of all shots.
      const its = read.get(rule);
      if (its) for (const from of entry.from) expect(its, `${rule} by ${key}`).toContain(from);
    }
  }
});

it('tells nobody what is kept inside, and says why', () => {
  for (const [name, why] of Object.entries(KEPT_INSIDE)) {
    expect(why).not.toBe('');
    for (const figures of shots) expect(figures).not.toHaveProperty(name);
  }
});

it('gives each figure that a review weighs a place of its own', () => {
  const places = [...DECLARATIONS.values()].flatMap(({ review }) => (review ? review.place : []));
  expect(places.length).toBeGreaterThan(20);
  expect(new Set(places).size).toBe(places.length);
});
