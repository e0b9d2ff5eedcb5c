/** A rule that breaks down is a finding that names it, and the others go on. */

import { expect, it } from 'vitest';
import { SHOT_RULES } from '../../shared/rules/registry.ts';
import { ruleFailed } from '../../shared/rules/rule-failed.ts';
import type { ShotRule, ShotView } from '../../shared/rules/shot-rule.ts';
import { Say } from '../../shared/say/say.ts';
import { runShotRules } from '../../shared/workspace/shot-findings.ts';
import { entryId } from '../support/entry-id.ts';

const [working] = SHOT_RULES as readonly [ShotRule<unknown>];
const at = { file: 'file:///w/plan.shootplan.yaml', entry: entryId('shots/frost'), path: [] };
const view = { bench: { at, shot: 'frost' } } as unknown as ShotView;

const breaking: ShotRule<unknown> = {
  ...working,
  name: 'depth-short',
  check: () => {
    throw new Error('the ring is stuck');
  },
};
const finding: ShotRule<unknown> = { ...working, check: () => [{ at, facts: {} }] };

it('stands on the shot, as an error, with the rule and the cause', () => {
  const found = runShotRules(view, [finding, breaking, finding]);
  expect(found.map(({ rule }) => rule)).toEqual([working.name, 'rule-failed', working.name]);
  const failed = found[1]!;
  expect(failed).toMatchObject({ severity: 'error', shot: 'frost', at: { ...at, part: 'key' } });
  const { what, why } = ruleFailed.words(failed.facts as never, new Say());
  expect(what).toContain('`depth-short`');
  expect(why).toContain('the ring is stuck');
});

it('is not taken for a shot without findings by anything that throws', () => {
  const nothing: unknown = 'no error at all';
  const odd: ShotRule<unknown> = {
    ...breaking,
    check: () => {
      throw nothing;
    },
  };
  expect(runShotRules(view, [odd])).toHaveLength(1);
});
