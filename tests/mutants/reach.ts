/** Which tests reach a source, the nearest first: those of its folder, then those of outside sources. */
import { importsOf, read, sources } from '../tidy/support/project.ts';

/** What tests the bundles, the whole program or the project's own files: far from any single line. */
const FAR = /^tests\/(?:editor|tidy|protocol|cli|bench|long|client|media|mutants|fuzz|work)\//;
/** Modules exchanged for others, which tests in one process would feel: as in vitest.config.ts. */
const ALONE = /\bvi\.(?:doMock|mock|stubEnv|stubGlobal|useFakeTimers)\(/;

/** Tests that start programs of their own take too long for each mutant. */
const STARTS_PROGRAMS = /support\/(?:command-line|ffmpeg)\.ts'/;

const importersOf = new Map<string, string[]>();
for (const file of sources)
  for (const { file: imported, isType } of importsOf(file))
    if (imported !== undefined && !isType)
      importersOf.set(imported, [...(importersOf.get(imported) ?? []), file]);

const isTest = (file: string): boolean => {
  if (!file.endsWith('.test.ts') || FAR.test(file)) return false;
  const text = read(file);
  return !ALONE.test(text) && !STARTS_PROGRAMS.test(text);
};

/** How many imports lie between a source and each test that reaches it. */
function distances(file: string): ReadonlyMap<string, number> {
  const steps = new Map([[file, 0]]);
  // A map is gone through in the order of its entries, also of those added meanwhile.
  for (const [at, distance] of steps)
    for (const importer of importersOf.get(at) ?? [])
      if (!steps.has(importer)) steps.set(importer, distance + 1);
  return steps;
}

/** @returns the nearest tests, at most `most` of them */
export function nearestTests(file: string, most: number): readonly string[] {
  const folder = file.split('/')[1];
  const rank = (test: string, distance: number): number => {
    if (test.startsWith(`tests/${folder}/`)) return 0;
    return distance + (test.startsWith('tests/published/') ? 0 : 1);
  };
  return [...distances(file)]
    .filter(([test]) => isTest(test))
    .map(([test, distance]) => ({ test, rank: rank(test, distance) }))
    .sort((a, b) => a.rank - b.rank || (a.test < b.test ? -1 : 1))
    .slice(0, most)
    .map(({ test }) => test);
}
