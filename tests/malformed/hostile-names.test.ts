/** Names that every JavaScript object knows, where a plan may have names, keys and sections. */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

const NAMES = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype'];

const errorsOf = (text: string) =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity === 'error');

/** Everything that the core says of a plan without being pointed at a place. */
function sayAll(text: string): void {
  const core = coreWith(text);
  const whole = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
  core.findings(PLAN);
  core.figures(PLAN);
  core.symbols(PLAN);
  core.sheet(PLAN);
  core.hints(PLAN, whole);
  core.fixesIn(PLAN, whole);
  core.findEntries('');
  for (const [line, written] of text.split('\n').entries())
    for (const character of [0, written.length]) {
      core.hover(PLAN, { line, character });
      core.completions(PLAN, { line, character });
    }
}

test('a section or group of any such name is an unknown key', () => {
  each(NAMES, (name) => {
    for (const [text, line] of [
      [`${SOUND}${name}:\n  a:\n    b: 1\n`, SOUND.split('\n').length - 1],
      [`${SOUND}${name}: 3\n`, SOUND.split('\n').length - 1],
      [
        SOUND.replace('  tubes:', `  ${name}:\n    x: { length: 3 mm }\n  tubes:`),
        SOUND.split('\n').indexOf('  tubes:'),
      ],
    ] as const) {
      expect(errorsOf(text).map(({ rule, range }) => [rule, range.start.line])).toEqual([
        ['unknown-key', line],
      ]);
      sayAll(text);
    }
  });
});

test('none of them is a name that is there already', () => {
  each(NAMES, (name) => {
    const used = SOUND.replace('[panel]', `[${name}]`);
    expect(errorsOf(used).map(({ rule }) => rule)).toEqual([
      /^[a-z]+$/.test(name) ? 'unknown-name' : 'wrong-value',
    ]);
    sayAll(used);
    sayAll(SOUND.replace('  second:', `  ${name}:`));
    sayAll(SOUND.replaceAll('macro-100', name));
  });
});

test('a rule that is none is said to be none, and where all of them are listed', () => {
  const text = `${SOUND}severity: { constructor: hint }\n`;
  expect(errorsOf(text).map(({ what, why }) => `${what} ${why}`)).toEqual([
    'No rule is called constructor. `lamella explain` lists all of them.',
  ]);
});
