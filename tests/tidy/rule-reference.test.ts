/** The rules, their files and their reference hold together. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { REFERENCE_PATH, ruleReference } from '../../client/build/rule-reference.ts';
import { RULE_TOPICS } from '../../client/build/rule-topics.ts';
import { PRECEDENCE } from '../../shared/rules/precedence.ts';
import { ALL_RULES, CLIP_RULES, RULE_NAMES } from '../../shared/rules/registry.ts';
import { type RuleCore, SEVERITIES } from '../../shared/rules/rule.ts';
import { each } from '../support/each.ts';
import { ROOT, read, sharedSources } from './support/project.ts';

const isRule = (value: unknown): value is RuleCore<unknown> =>
  typeof value === 'object' && value !== null && 'docs' in value && 'words' in value;

const rulesByFile = (
  await Promise.all(
    sharedSources
      .filter((file) => file.startsWith('shared/rules/'))
      .map(async (file) => {
        const exported: Record<string, unknown> = await import(
          pathToFileURL(path.join(ROOT, file)).href
        );
        const rules = Object.values(exported).filter(isRule);
        return rules.map((rule) => [path.basename(file, '.ts'), rule] as const);
      }),
  )
).flat();

it('the reference is what the rules say', () => {
  const isCurrent = read(REFERENCE_PATH) === ruleReference();
  expect(isCurrent, 'stale: run node client/build/rule-reference.mjs').toBe(true);
});

it('every rule that a topic lists is one, and is listed there once', () => {
  const listed = RULE_TOPICS.flatMap(([, names]) => names);
  expect(listed.filter((name) => !RULE_NAMES.includes(name as never))).toEqual([]);
  expect(new Set(listed).size).toBe(listed.length);
});

describe('every rule', () => {
  it('is listed once', () => {
    expect([...RULE_NAMES].sort()).toEqual(rulesByFile.map(([, rule]) => rule.name).sort());
    expect(new Set(RULE_NAMES).size).toBe(RULE_NAMES.length);
  });

  it('stands in a file of its name', () => {
    each(rulesByFile, ([file, rule]) => {
      expect(rule.name).toBe(file);
      expect(rule.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(SEVERITIES).toContain(rule.severity);
    });
  });

  // Some can't be shown by changing a value: a plan can't make the program fail, one that passes a
  // budget is no example that anybody would read, and clips are not in the text.
  const unshown = ['rule-failed', 'too-much', ...CLIP_RULES.map(({ name }) => name)];

  it('shows when it fires', () => {
    each(
      ALL_RULES.filter(({ name }) => !unshown.includes(name)),
      ({ docs }) => expect(docs.bad.length).toBeGreaterThan(0),
      ({ name }) => name,
    );
  });
});

describe('what silences what', () => {
  it('the first and those behind it are rules', () => {
    each(Object.entries(PRECEDENCE), ([first, behind]) => {
      for (const name of [first, ...behind]) expect(RULE_NAMES).toContain(name);
      expect(behind).not.toContain(first);
    });
  });
});
