import { expect, test } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { createCore } from '../../shared/core/core.ts';
import { isMissed } from '../../shared/figures/reasons.ts';

const FILE = 'file:///plans/new.shootplan.yaml';

test('a new plan has nothing to find, and its shot can be worked out to the last figure', () => {
  const core = createCore({ rootOf: () => 'file:///plans' });
  core.give(FILE, planTemplate());
  expect(core.findings(FILE).filter(({ severity }) => severity !== 'hint')).toEqual([]);
  expect(core.state(FILE)).toEqual({ ready: 1, shots: 1 });
  for (const { notKnown } of core.figures(FILE).values()) {
    // What a film or a boom would have ("the subject is not a film") is not missing.
    const missing = Object.keys(notKnown).filter((figure) => isMissed(notKnown, figure));
    expect(missing).toEqual([]);
  }
});
