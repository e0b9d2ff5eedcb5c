/**
 * Every rule that can offer a way out does so over the samples and the rules' own examples, and each
 * way out is taken: its finding is gone, no error is new, the text is still a plan of the same shots.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../../shared/api/located.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { defectsIn } from '../planted/support/defects.ts';
import { each, laws } from '../support/each.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';
import { WITHOUT_FIX } from '../support/without-fix.ts';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const samples: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(SAMPLES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => [name, readFileSync(`${SAMPLES}${name}`, 'utf8')]),
);

const offered = new Map<string, number>();

const coreOf = (text: string): Core => coreWith(text, samples);

const isError = ({ severity }: LocatedFinding): boolean => severity === 'error';

const keyOf = ({ rule, what }: LocatedFinding): string => `${rule}: ${what}`;

const NONE: ReadonlySet<string> = new Set();
const foundIn = (text: string): ReadonlySet<string> =>
  new Set(coreOf(text).findings(PLAN).map(keyOf));

/** Tries every fix of every finding in a plan but of those in `tried`, whose fixes were. */
function tryAll(text: string, tried = NONE): void {
  const core = coreOf(text);
  const before = core.findings(PLAN);
  const shots = core.state(PLAN).shots;
  // A core reads an edit as it reads the text afresh: a law of its own, and much quicker.
  const other = coreOf(text);
  for (const finding of before.filter((one) => !tried.has(keyOf(one))))
    for (const fix of core.fixesOf(finding)) {
      // What changes the shared kit is the kit's own business.
      if (fix.edits.some(({ file }) => file !== PLAN)) continue;
      offered.set(finding.rule, (offered.get(finding.rule) ?? 0) + 1);
      tryOne(other, text, before, shots, finding, fix);
    }
}

function tryOne(
  core: Core,
  text: string,
  before: readonly LocatedFinding[],
  shots: number,
  { rule, what }: LocatedFinding,
  fix: LocatedFix,
): void {
  const said = `${rule}: ${what} → ${fix.title} (${fix.sideEffects ?? 'no price'})`;
  const mended = applied(text, fix.edits);
  core.give(PLAN, mended);
  const after = core.findings(PLAN);
  const count = (all: readonly LocatedFinding[]) =>
    all.filter((other) => other.rule === rule && other.what === what).length;
  expect(count(after), said).toBeLessThan(count(before));
  const readable = before.every((other) => other.rule !== 'syntax');
  if (readable) {
    expect(after.filter(isError).length, said).toBeLessThanOrEqual(before.filter(isError).length);
    expect(core.state(PLAN).shots, said).toBe(shots);
  }
}

laws(
  Object.entries(samples),
  ([name]) => name,
  ([_, text], law) => {
    law('every way out is one', () => {
      tryAll(text);
    });

    law('every way out of a slip is one', () => {
      // One of each kind: the slips themselves are looked at one by one elsewhere.
      const kinds = new Map(defectsIn(text).map((defect) => [defect.kind, defect]));
      const tried = foundIn(text);
      for (const { text: slipped } of kinds.values()) tryAll(slipped, tried);
    });
  },
);

const shown = ALL_RULES.filter(({ docs }) => docs.bad.length > 0);

it('every way out of a bad example is one', () => {
  const bad = shown.flatMap(({ name, docs }) => docs.bad.map((example) => ({ name, ...example })));
  tryAll(EXAMPLE_PLAN);
  const tried = foundIn(EXAMPLE_PLAN);
  each(
    bad,
    ({ change }) => tryAll(changed(EXAMPLE_PLAN, change), tried),
    ({ name, says }) => `${name}: ${says}`,
  );
});

it('rules without a way out are those of which it is known', () => {
  const silent = ALL_RULES.map(({ name }) => name).filter((name) => !offered.has(name));
  expect(silent.filter((name) => !WITHOUT_FIX.has(name))).toEqual([]);
  expect([...WITHOUT_FIX].filter((name) => offered.has(name))).toEqual([]);
});

afterAll(() => {
  const counts = ALL_RULES.map(({ name }) => `${name} ${offered.get(name) ?? 0}`).join(', ');
  console.log(`Fixes tried over samples, slips and examples: ${counts}`);
});
