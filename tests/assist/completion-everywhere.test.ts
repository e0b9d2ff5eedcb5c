/**
 * Wherever the caret stands, in whatever is left of a text, completion holds and does no harm: no
 * item applied leaves more errors of text, shape or names in the file, nor more errors of any kind
 * in the shot that it is written in. What a value outside of shots means for shots elsewhere (a
 * larger delivery, a lamp put lower) is that value's own matter, and no harm of completing it; and
 * a key that a figure waited for may let an error be seen that was there all along.
 */
import { afterAll, expect, test } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import { applied, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { coreBeside, positionAt, sample, sampleNames, textErrors } from './support/completing.ts';

/** Places in each sample; in the long run more than any has characters. */
const RUNS = manyRuns(16) > 16 ? Number.POSITIVE_INFINITY : 16;
const LONG_MS = 3_600_000;

const counts = { places: 0, items: 0 };
afterAll(() => console.info(`Completion applied: ${JSON.stringify(counts)}`));

/** Offsets spread over a text, all of them in the long run; each sample begins elsewhere. */
function offsets(text: string, salt: number): number[] {
  const stride = Math.max(1, Math.floor(text.length / RUNS));
  return Array.from({ length: Math.ceil(text.length / stride) }, (_, index) =>
    Math.min(text.length, index * stride + (salt % stride)),
  );
}

const told = (findings: readonly LocatedFinding[]): string =>
  findings.map(({ rule, what, range }) => `${range.start.line + 1}: ${rule}: ${what}`).join('\n');

const harmful = (core: Core, shot: string | null): readonly LocatedFinding[] => {
  const errors = core.findings(PLAN).filter(({ severity }) => severity === 'error');
  const ofText = new Set(textErrors(errors));
  return errors.filter((one) => ofText.has(one) || (shot !== null && one.shot === shot));
};

/** Every item tried out at one place; the worst that any does is compared with what was there. */
function harmAt(text: string, offset: number): string[] {
  const core = coreBeside(text);
  const position = positionAt(text, offset);
  const shot = core.shotAt(PLAN, position);
  const before = harmful(core, shot);
  const { items } = core.completions(PLAN, position);
  counts.places++;
  counts.items += items.length;
  return items.flatMap((item) => {
    expect(item.range.start.line).toBe(item.range.end.line);
    const after = applied(text, [item]);
    const now = harmful(coreBeside(after), item.kind === 'key' ? null : shot);
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
  LONG_MS,
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
  LONG_MS,
);
