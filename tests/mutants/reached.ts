/**
 * Runs before each test file of the first, unchanged run and notes which functions the file's tests
 * enter: a mutant is tried only against tests that enter its function.
 */
import { appendFileSync } from 'node:fs';
import { afterAll, beforeAll, expect } from 'vitest';

/** By the number of each function: 1 where it was entered. A write is all that a hot loop pays for. */
const entered: number[] = [];
(globalThis as { __entered?: number[] }).__entered = entered;
let test = '';

beforeAll(() => {
  test = expect.getState().testPath ?? '';
});

afterAll(() => {
  const { LAMELLA_ENTERED } = process.env;
  if (LAMELLA_ENTERED !== undefined)
    appendFileSync(
      LAMELLA_ENTERED,
      `${JSON.stringify({ test, entered: Object.keys(entered).map(Number) })}\n`,
    );
});
