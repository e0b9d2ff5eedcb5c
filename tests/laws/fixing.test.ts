/** After `check --fix` a new check finds nothing that it would still do, whatever the plan. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fixPlans } from '../../server/commands/fix-plans.ts';
import { PlanSet } from '../../server/files/plan-set.ts';
import { createCore } from '../../shared/core/core.ts';
import { TEXT_RULES } from '../../shared/rules/registry.ts';
import { changed } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';

const ROOT = path.resolve('/w');

type Texts = Readonly<Record<string, string>>;

async function plansOf(texts: Texts): Promise<PlanSet> {
  const plans = new PlanSet({
    cwd: ROOT,
    root: ROOT,
    createCore,
    read: async () => ({ ok: false, why: 'not-found', detail: 'no such file' }),
  });
  for (const [name, text] of Object.entries(texts))
    plans.addText(path.join(ROOT, name), Buffer.from(text, 'utf8'));
  await plans.follow();
  return plans;
}

/** Errors that are seen once a text can be read were there before; others would be new. */
const ofText = new Set(TEXT_RULES.map(({ name }) => name));

async function judge(texts: Texts): Promise<number> {
  const plans = await plansOf(texts);
  const named = plans.files;
  const count = (rule: (name: string) => boolean) =>
    named
      .flatMap((file) => plans.core.findings(file))
      .filter((finding) => finding.severity === 'error' && rule(finding.rule)).length;
  const textErrors = count((name) => ofText.has(name));
  const { files, done } = await fixPlans(plans, named);
  expect(count((name) => ofText.has(name))).toBeLessThanOrEqual(textErrors);
  expect(files.length === 0).toBe(done.length === 0);
  const fixed = Object.fromEntries(
    named.map((file, index) => [Object.keys(texts)[index]!, plans.text(file)!]),
  );
  // From nothing, so that nothing remembered makes it hold.
  const again = await plansOf(fixed);
  const second = await fixPlans(again, again.files);
  expect(second).toEqual({ files: [], done: [] });
  return done.length;
}

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));

it('over the samples together, and each alone', async () => {
  const texts = Object.fromEntries(
    readdirSync(SAMPLES)
      .filter((name) => name.endsWith('.shootplan.yaml'))
      .map((name) => [name, readFileSync(`${SAMPLES}${name}`, 'utf8')]),
  );
  expect(await judge(texts)).toBeGreaterThan(0);
  for (const [name, text] of Object.entries(texts)) await judge({ [name]: text });
});

it('over random plans', async () => {
  let fixes = 0;
  await fc.assert(
    fc.asyncProperty(
      randomPlan(),
      fc.boolean(),
      fc.constantFrom('\n', '\r\n'),
      async ({ text }, isBare, eol) => {
        const plan = isBare ? changed(text, { preflight: null }) : text;
        fixes += await judge({ 'plan.shootplan.yaml': plan.replaceAll('\n', eol) });
      },
    ),
    { numRuns: manyRuns(80) },
  );
  expect(fixes).toBeGreaterThan(80);
});
