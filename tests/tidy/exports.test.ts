/** What a source offers to others, another takes: nothing waits for a use that has gone. */
import { expect, it } from 'vitest';
import { offeredBy, read, sources, takenBy, tracked } from './support/project.ts';

const texts = tracked
  .filter((file) => /\.(ts|mjs|js)$/.test(file))
  .map((file) => [file, read(file)] as const);

/** What a bundle begins with is called by the editor, a worker or the command's first part. */
const entries = [...read('client/build/bundle.mjs').matchAll(/entry: '([^']+)'/g)].map(
  ([, file]) => file,
);

it('every export has a taker', () => {
  const taken = new Set(texts.flatMap(([file, text]) => takenBy(file, text)));
  const waiting = sources
    .filter((file) => /^(?:shared|server|client)\//.test(file) && !entries.includes(file))
    .filter((file) => !taken.has(`${file} *`))
    .flatMap((file) =>
      offeredBy(read(file))
        .filter((name) => !taken.has(`${file} ${name}`))
        .map((name) => `${file} ${name}`),
    );
  expect(waiting).toEqual([]);
});

it('exports and imports are seen in every form that stands in a source', () => {
  const offers = [
    'export const a = 1;',
    'export async function b() {}',
    'export abstract class C {}',
    "export type { D, type E, x as F } from './other.ts';",
    'export interface G {}',
    'const notOffered = 1;',
  ];
  expect(offeredBy(offers.join('\n'))).toEqual(['a', 'b', 'C', 'G', 'D', 'E', 'F']);
  const takes = [
    "import { a, type B as C } from './x.ts';",
    "import type {\n  D,\n  E,\n} from '../y.ts';",
    "import * as whole from './z.ts';",
    'whole.f(1);',
    "export { G as H } from './x.ts';",
    "await import('./late.ts');",
    "import { none } from 'elsewhere';",
  ];
  expect(takenBy('p/q/here.ts', takes.join('\n'))).toEqual([
    'p/q/x.ts a',
    'p/q/x.ts B',
    'p/y.ts D',
    'p/y.ts E',
    'p/q/x.ts G',
    'p/q/z.ts f',
    'p/q/late.ts *',
  ]);
});
