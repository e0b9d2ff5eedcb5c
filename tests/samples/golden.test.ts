/**
 * Every sample, whole: its findings and its figures as they were last looked at and found right. After a
 * change that means to move them: `UPDATE_GOLDEN=1 npx vitest run tests/samples`, then read the difference.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { messageOf } from '../../shared/api/located.ts';
import { createCore } from '../../shared/core/core.ts';
import type { ShotFiguresJson } from '../../shared/figures/json.ts';
import { laws } from '../support/each.ts';

const folder = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const SAMPLES = folder('../../samples/');
const GOLDEN = folder('./golden/');
const SUFFIX = '.shootplan.yaml';

/** Samples that show what a tired person gets wrong. All others are clean. */
const WITH_MISTAKES = new Set(['first-draft']);

const samples = readdirSync(SAMPLES)
  .filter((name) => name.endsWith(SUFFIX))
  .map((name) => name.slice(0, -SUFFIX.length));

const ROOT = 'file:///samples';
const uriOf = (sample: string) => `${ROOT}/${sample}${SUFFIX}`;

/** One core that holds them all, since samples may use one another. */
const core = createCore({ rootOf: () => ROOT });
for (const sample of samples) {
  core.give(uriOf(sample), readFileSync(`${SAMPLES}${sample}${SUFFIX}`, 'utf8'));
}

/** Six digits are more than any figure is good to, and free of the last bits of a machine. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(6)) : value;

/** One line for each figure that is known, and one for each reason why others are not. */
function figuresOf({ notKnown, ...figures }: ShotFiguresJson) {
  const known = Object.entries(figures).filter(([, value]) => value !== null);
  const reasons: Record<string, string[]> = {};
  for (const [figure, reason] of Object.entries(notKnown)) {
    reasons[reason] ??= [];
    reasons[reason].push(figure);
  }
  return {
    ...Object.fromEntries(known.map(([name, value]) => [name, JSON.stringify(value, rounded)])),
    'not known': Object.fromEntries(
      Object.entries(reasons).map(([reason, names]) => [reason, names.join(', ')]),
    ),
  };
}

const saidOf = (sample: string) => {
  const file = uriOf(sample);
  const findings = core.findings(file).map((finding) => {
    const { line, character } = finding.range.start;
    const at = `${line + 1}:${character + 1} ${finding.severity} ${finding.rule}`;
    return [at, messageOf(finding)] as const;
  });
  const figures = [...core.figures(file)].map(([shot, its]) => [shot, figuresOf(its)] as const);
  expect(new Set(findings.map(([at]) => at)).size).toBe(findings.length);
  return { findings: Object.fromEntries(findings), figures: Object.fromEntries(figures) };
};

it('there are samples, and a golden text of nothing else', () => {
  expect(samples.length).toBeGreaterThanOrEqual(2);
  const golden = readdirSync(GOLDEN).map((name) => name.replace(/\.json$/, ''));
  expect(golden.filter((name) => !samples.includes(name))).toEqual([]);
  expect([...WITH_MISTAKES].filter((name) => !samples.includes(name))).toEqual([]);
});

laws(
  samples,
  (sample) => sample,
  (sample, law) => {
    law('says what it said when it was last looked at', () => {
      const golden = `${GOLDEN}${sample}.json`;
      const said = saidOf(sample);
      if (process.env.UPDATE_GOLDEN) writeFileSync(golden, `${JSON.stringify(said, null, 2)}\n`);
      if (!existsSync(golden))
        throw new Error(`${sample} has no golden text: see above how to make it`);
      expect(said).toEqual(JSON.parse(readFileSync(golden, 'utf8')));
    });

    law('has a title and 60 lines or more, and asks for no file that is not there', () => {
      const text = readFileSync(`${SAMPLES}${sample}${SUFFIX}`, 'utf8');
      expect(text.split('\n').length).toBeGreaterThanOrEqual(60);
      expect(text).toMatch(/^title: \S/m);
      expect(core.wanted(uriOf(sample))).toEqual([]);
    });
  },
);

laws(
  samples.filter((sample) => !WITH_MISTAKES.has(sample)),
  (sample) => sample,
  (sample, law) => {
    law('is clean: no error, no warning, and at most one information per shot', () => {
      const findings = core.findings(uriOf(sample));
      const bad = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
      expect(bad.map(({ rule, what }) => `${rule}: ${what}`)).toEqual([]);
      const perShot = new Map<string | undefined, number>();
      for (const { severity, shot } of findings) {
        if (severity === 'note') perShot.set(shot, (perShot.get(shot) ?? 0) + 1);
      }
      for (const [shot, count] of perShot) expect(count, shot ?? 'the plan').toBeLessThanOrEqual(1);
      const { ready, shots } = core.state(uriOf(sample));
      expect(ready).toBe(shots);
    });
  },
);

it.each([...WITH_MISTAKES])('%s shows mistakes of several kinds', (sample) => {
  const rules = core
    .findings(uriOf(sample))
    .filter(({ severity }) => severity === 'error' || severity === 'warning')
    .map(({ rule }) => rule);
  expect(new Set(rules).size).toBeGreaterThanOrEqual(5);
});
