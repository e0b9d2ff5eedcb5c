/** What `npm run mutants` makes of a source, and what it leaves alone. */
import { describe, expect, it } from 'vitest';
import { each } from '../support/each.ts';
import { exists, read } from '../tidy/support/project.ts';
import { EQUIVALENTS_PATH, equivalents } from './equivalents.ts';
import { linesOf, mutated, mutationsOf } from './mutations.ts';
import { mutationsIn } from './pick.ts';
import { nearestTests } from './reach.ts';

/** What one line may become. */
const made = (source: string): readonly string[] =>
  mutationsOf('a.ts', source).map((mutation) => mutated(source, mutation));

describe('a line', () => {
  it.each([
    ['a < b;', ['a <= b;', 'a > b;']],
    ['a + b;', ['a - b;']],
    ['a && b;', ['a || b;']],
    ['let a = 0.5;', ['let a = 0.625;']],
    ['let a = true;', ['let a = false;']],
    ['-a;', [' a;']],
    ['if (a) b();', ['if (!(a)) b();']],
    ['Math.min(a);', ['Math.max(a);']],
    ['const f = () => { return a; };', ['const f = () => { return undefined; };']],
  ])('%s', (source, expected) => {
    expect(made(source)).toEqual(expected);
  });

  it.each([
    '// a < b, 7',
    'type A = { a: 1 };',
    'const a: 2 | 3 = b;',
    "import { a } from './a.ts';",
    'message`1 < 2`;',
    "const a = '7 + 1';",
    'const a = { 1: b };',
  ])('%s is left alone', (source) => {
    expect(made(source)).toEqual([]);
  });

  it('is shown as it was and as it became', () => {
    const source = 'const a = b;\n  const c =\n    a < b;\n';
    const [mutation] = mutationsOf('a.ts', source);
    expect(mutation?.line).toBe(3);
    expect(linesOf(source, mutation!)).toEqual(['a < b;', 'a <= b;']);
  });
});

describe('a draw', () => {
  it('is the same for a seed, and another for another', () => {
    const [first, again, other] = [7, 7, 8].map((seed) => mutationsIn('load', seed, 5));
    expect(first).toHaveLength(5);
    expect(again).toEqual(first);
    expect(other).not.toEqual(first);
  });

  it('of a place without any code says so', () => {
    expect(() => mutationsIn('no-such-folder', 1, 5)).toThrow(
      'nothing to change in no-such-folder',
    );
  });
});

it('the nearest tests of a source are those of its folder, then those against others', () => {
  const tests = nearestTests('shared/load/statics.ts', 3);
  expect(tests.slice(0, 2)).toEqual(['tests/load/load.test.ts', 'tests/published/statics.test.ts']);
});

it('every equivalent is still a line of its file that becomes what is said, with a reason', () => {
  expect(equivalents().length).toBeGreaterThan(0);
  each(
    equivalents(),
    ({ file, line, becomes, why }) => {
      expect(exists(file)).toBe(true);
      const source = read(file);
      const lines = mutationsOf(file, source).map((mutation) => linesOf(source, mutation));
      expect(lines).toContainEqual([line, becomes]);
      expect(why).toMatch(/^[A-Z].{20,}\.$/s);
    },
    ({ file, line }) => `${EQUIVALENTS_PATH}: ${file}: ${line}`,
  );
});
