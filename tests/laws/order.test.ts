/** What is written in another order is told in another order: checks, modes, findings. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { answersOf } from './day.ts';

/** Every pair of neighbours in the same depth, and the pairs of every mapping on one line, turned. */
function turnedOnce(text: string): string[] {
  const lines = text.split('\n');
  const depth = (line = '') => (line.trim() === '' ? -1 : line.search(/\S/));
  return lines.flatMap((line, index) => {
    const next = lines[index + 1] ?? '';
    const swapped =
      depth(line) >= 0 && depth(line) === depth(next)
        ? [lines.with(index, next).with(index + 1, line)]
        : [];
    const inBraces = /^(.*[{[] ?)([^{}[\]]+, [^{}[\]]+?)( ?[}\]].*)$/.exec(line);
    const [, before = '', pairs = '', after = ''] = inBraces ?? [];
    const turned = inBraces
      ? [lines.with(index, before + pairs.split(', ').reverse().join(', ') + after)]
      : [];
    return [...swapped, ...turned].map((each) => each.join('\n'));
  });
}

it('a core that has read another order says what a fresh one does', () => {
  const aged = coreWith(EXAMPLE_PLAN);
  const asked = (core: typeof aged) => ({
    ...Object.fromEntries(answersOf(core, [PLAN])),
    sheet: core.sheet(PLAN),
    compared: core.compared(PLAN),
  });
  asked(aged);
  const variants = turnedOnce(EXAMPLE_PLAN);
  expect(variants.length).toBeGreaterThan(40);
  for (const text of variants) {
    aged.give(PLAN, text);
    expect(JSON.stringify(asked(aged))).toBe(JSON.stringify(asked(coreWith(text))));
    aged.give(PLAN, EXAMPLE_PLAN);
    asked(aged);
  }
}, 60_000);
