/** Wherever the caret stands, in whatever is left of a text, completion holds and does no harm. */
import { expect, test } from 'vitest';
import type { LocatedFinding } from '../../shared/assist/located.ts';
import { applied, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { coreBeside, positionAt, sample, sampleNames, textErrors } from './support/completing.ts';

const RUNS = manyRuns(16);

/** Offsets spread over a text, all of them in the long run; each sample begins elsewhere. */
function offsets(text: string, salt: number): number[] {
  const stride = Math.max(1, Math.floor(text.length / RUNS));
  return Array.from({ length: Math.ceil(text.length / stride) }, (_, index) =>
    Math.min(text.length, index * stride + (salt % stride)),
  );
}

const told = (findings: readonly LocatedFinding[]): string =>
  findings.map(({ rule, what, range }) => `${range.start.line + 1}: ${rule}: ${what}`).join('\n');

/** Every item tried out at one place; the worst that any does is compared with what was there. */
function harmAt(text: string, offset: number): string[] {
  const core = coreBeside(text);
  const before = textErrors(core.findings(PLAN));
  const { items } = core.completions(PLAN, positionAt(text, offset));
  return items.flatMap((item) => {
    expect(item.range.start.line).toBe(item.range.end.line);
    const after = applied(text, [item]);
    const now = textErrors(coreBeside(after).findings(PLAN));
    if (now.length <= before.length) return [];
    const line = after
      .split('\n')
      .slice(Math.max(0, item.range.start.line - 2), item.range.start.line + 3);
    return [
      `${item.label} at ${JSON.stringify(text.slice(Math.max(0, offset - 30), offset))}|\n${line.join('\n')}\n-- was:\n${told(before)}\n-- is:\n${told(now)}`,
    ];
  });
}

test.each(sampleNames.map((name, index) => [name, index] as const))(
  'at every character of %s no item makes it worse',
  (name, index) => {
    const text = sample(name);
    const harm = offsets(text, index * 7 + 3).flatMap((offset) => harmAt(text, offset));
    expect(harm.slice(0, 3).join('\n\n')).toBe('');
  },
);

test.each(sampleNames.map((name, index) => [name, index] as const))(
  'at every truncation of %s no item makes it worse',
  (name, index) => {
    const text = sample(name);
    const harm = offsets(text, index * 11 + 5).flatMap((offset) =>
      harmAt(text.slice(0, offset), offset),
    );
    expect(harm.slice(0, 3).join('\n\n')).toBe('');
  },
);
