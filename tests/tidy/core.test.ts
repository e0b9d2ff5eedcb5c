/** The core (shared/) knows no editor, no protocol, no file system, no clock: text in, data out. */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { importsIn, importsOf, read, sharedSources, withoutComments } from './support/project.ts';

/** A parser of YAML, colours, and PNG: what the core does not bring itself has no effects. */
const LIBRARIES = ['yaml', 'culori/fn', 'fast-png'];

test('there is a core', () => {
  expect(sharedSources.length).toBeGreaterThan(100);
});

test('every file imports the core and pure libraries only', () => {
  each(sharedSources, (file) => {
    for (const { written, file: own } of importsOf(file)) {
      if (own === undefined) expect(LIBRARIES).toContain(written);
      else expect(own).toMatch(/^shared\//);
    }
  });
});

// With no types of Node or of a browser in sight the compiler knows no `process`, no `fetch`, no
// `console` and no timer, so that their use does not pass `npm run check:types`.
test('the core is compiled for a language without surroundings', () => {
  const { extends: base, compilerOptions, include } = JSON.parse(read('shared/tsconfig.json'));
  expect(base).toBe('../tsconfig.json');
  expect(compilerOptions.types).toEqual([]);
  expect(compilerOptions.lib).toEqual(['ES2023']);
  expect(include).toEqual(['.']);
  expect(JSON.parse(read('package.json')).scripts['check:types']).toContain('-p shared');
});

/** What the language itself has of the outside: the clock, chance, the reader's country, new code. */
const EFFECTS =
  /\bDate\.now\b|\bnew Date\(\)|\bDate\(\)|\bMath\.random\b|\bglobalThis\b|\bIntl\b|\.toLocale\w+\(|\.localeCompare\(|\beval\(|\bnew Function\(|\bdeclare (?:global|var|let|function)\b/;

test('no file has effects or looks at anything outside', () => {
  each(sharedSources, (file) => {
    expect(withoutComments(read(file))).not.toMatch(EFFECTS);
    expect(read(file)).not.toMatch(/@ts-(?:ignore|nocheck|expect-error)/);
  });
});

test.each([
  ["import fs from 'node:fs';", 'node:fs', false],
  ["import 'vscode';", 'vscode', false],
  ["import {\n  type A,\n  type B,\n} from './a.ts';", './a.ts', true],
  ["import { type A, b } from './a.ts';", './a.ts', false],
  ["export * from './a.ts';", './a.ts', false],
  ["const fs = await import('node:fs');", 'node:fs', false],
  ["const fs = require('fs');", 'fs', false],
])('the import in %j is seen', (line, written, isType) => {
  expect(importsIn('shared/x/y.ts', line)).toMatchObject([{ written, isType }]);
});

test('what a comment imports is not', () => {
  expect(importsIn('shared/x/y.ts', "/**\n * import 'a';\n */\n// import 'b';\n")).toEqual([]);
});
