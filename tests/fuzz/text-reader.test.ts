/**
 * The reader against `yaml` (npm, 2.x), another implementation of YAML 1.2: whatever the reader
 * takes on, `yaml` reads without an error and to the same keys, values and ranges.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '../../shared/syntax/parser.ts';
import { readYaml } from '../../shared/text/from-yaml.ts';
import { split } from '../../shared/text/split.ts';
import { manyRuns } from '../support/runs.ts';
import { hostilePlan, plan } from './text-plans.ts';

/** The tree of a text in the common shapes; null: it is none. */
const readCommon = (text: string) => {
  const syntax = parse(text);
  return syntax?.defects.length === 0 && syntax.root.pairs.length > 0 ? syntax.root : null;
};

test('a plan in the common shapes is read by the reader alone', () => {
  for (const chunk of split(plan)) {
    if (chunk.kind === 'loose') continue;
    expect(readCommon(chunk.text), chunk.text).not.toBeNull();
    expect(readCommon(chunk.text)).toEqual(readYaml(chunk.text).root);
  }
});

test('what the reader takes on, `yaml` reads to the same tree', () => {
  let taken = 0;
  fc.assert(
    fc.property(hostilePlan, (text) => {
      for (const chunk of split(text)) {
        if (chunk.kind === 'loose' || chunk.bom) continue;
        const ours = readCommon(chunk.text);
        if (ours === null) continue;
        taken++;
        const theirs = readYaml(chunk.text);
        expect(theirs.error, chunk.text).toBeNull();
        expect(theirs.foreign, chunk.text).toEqual([]);
        expect(ours, chunk.text).toEqual(theirs.root);
      }
    }),
    { numRuns: manyRuns(1000) },
  );
  expect(taken).toBeGreaterThan(1000);
}, 3_600_000);
