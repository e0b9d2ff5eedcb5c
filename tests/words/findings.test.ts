/**
 * In another language nothing changes but the words: every sample, and every bad example of every
 * rule, in English and in a language whose every message stands in brackets.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../../shared/api/located.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { inPseudo, untranslated, withoutBrackets } from '../support/pseudo.ts';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const ROOT = 'file:///samples';
const samples = readdirSync(SAMPLES).filter((name) => name.endsWith('.shootplan.yaml'));
const textOf = (sample: string): string => readFileSync(`${SAMPLES}${sample}`, 'utf8');

interface Told {
  readonly finding: LocatedFinding;
  readonly fixes: readonly LocatedFix[];
}

const toldBy = (core: Core, file: string): readonly Told[] =>
  core.findings(file).map((finding) => ({ finding, fixes: core.fixesOf(finding) }));

const wordsOf = ({ finding, fixes }: Told): readonly string[] => [
  finding.what,
  finding.why,
  ...finding.related.map(({ words }) => words),
  ...fixes.flatMap(({ title, sideEffects = '' }) => [title, sideEffects]),
];

/** All but the words. */
const dataOf = ({ finding, fixes }: Told) => {
  const { what: _what, why: _why, related, ...data } = finding;
  return {
    ...data,
    related: related.map(({ file, range }) => ({ file, range })),
    fixes: fixes.map(({ edits }) => edits),
  };
};

/**
 * A first sentence that is too long is cut, in brackets sooner; within a title English loses the
 * capital of a sentence, which other languages keep.
 */
const isSame = (said: string, pseudo: string): boolean => {
  const english = said.toLowerCase();
  const bare = withoutBrackets(pseudo).toLowerCase();
  return bare === english || (bare.endsWith('…') && english.startsWith(bare.slice(0, -1)));
};

function expectSame(make: () => Core, file: string, plan: string): void {
  const english = toldBy(make(), file);
  const pseudo = inPseudo(() => toldBy(make(), file));
  expect(pseudo.map(dataOf)).toEqual(english.map(dataOf));
  const all = pseudo.flatMap(wordsOf);
  const others = english.flatMap(wordsOf);
  // What a fix writes is the plan's own, and stands in its title as it will stand there.
  const written = pseudo.flatMap(({ fixes }) => fixes.flatMap(({ edits }) => edits));
  const own = [plan, ...written.map(({ text }) => text)].join('\n');
  expect(all.filter((text, index) => !isSame(others[index] ?? '', text))).toEqual([]);
  const left = all.filter((text) => untranslated(text, own).length > 0);
  expect(left.map((text) => `${text} (${untranslated(text, own).join(', ')})`)).toEqual([]);
}

describe('every sample', () => {
  const all = samples.map(textOf).join('\n');
  const make = (): Core => {
    const core = createCore({ rootOf: () => ROOT });
    for (const sample of samples) core.give(`${ROOT}/${sample}`, textOf(sample));
    return core;
  };

  it('says the same, but for the words', () => {
    each(samples, (sample) => {
      expectSame(make, `${ROOT}/${sample}`, all);
    });
  });
});

const shown = ALL_RULES.filter(({ docs }) => docs.bad.length > 0);

it('every bad example of every rule', () => {
  const bad = shown.flatMap(({ name, docs }) => docs.bad.map((example) => ({ name, ...example })));
  each(
    bad,
    ({ change }) => {
      const plan = changed(EXAMPLE_PLAN, change);
      expectSame(() => coreWith(plan), PLAN, plan);
    },
    ({ name, says }) => `${name}: ${says}`,
  );
});
