/**
 * Runs before each test file of the first, unchanged run and notes which functions the file's tests
 * enter: a mutant is tried only against tests that enter its function.
 */
import { appendFileSync } from 'node:fs';
import { afterAll, beforeAll, expect } from 'vitest';

interface Noting {
  __entered?: (name: string) => boolean;
}

const entered = new Set<string>();
let test = '';

beforeAll(() => {
  test = expect.getState().testPath ?? '';
  (globalThis as Noting).__entered = (name) => entered.add(name) !== undefined;
});

afterAll(() => {
  const { LAMELLA_ENTERED } = process.env;
  if (LAMELLA_ENTERED !== undefined)
    appendFileSync(LAMELLA_ENTERED, `${JSON.stringify({ test, entered: [...entered] })}\n`);
});
