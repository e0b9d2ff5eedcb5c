/** Numbers as other notations, habits and word processors write them: what is told and offered. */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

const withField = (value: string): string => SOUND.replace('field: 66 mm', `field: ${value}`);

const told = (value: string) => {
  const text = withField(value);
  const core = coreWith(text);
  const [error, ...others] = core.findings(PLAN).filter(({ severity }) => severity === 'error');
  expect(others).toEqual([]);
  const fixed = core.fixesOf(error!).map(({ edits }) => applied(text, edits));
  return { why: error!.why, fixed };
};

test('each spelling is offered as 66 mm, and as nothing else', () => {
  each(['66 mm,', '66 mm;', '“66 mm”', '„66 mm“', '‘66 mm’'], (value) => {
    expect(told(value).fixed).toEqual([withField('66 mm')]);
  });
});

test.each([
  ['0.06.600,5 mm', []],
  ['1.5,3 mm', []],
])('%s is no number, and none is guessed', (value, fixed) => {
  expect(told(value).fixed).toEqual(fixed);
});

test('points for thousands with a comma for decimals are read as that', () => {
  expect(told('1.000,5 mm').fixed).toEqual([withField('1000.5 mm')]);
  expect(told('1,000.5 mm').fixed).toEqual([withField('1000.5 mm')]);
});

test.each([
  ['0 mm', "It can't be zero."],
  ['-1 mm', "It can't be below zero."],
  ['9999999999 mm', 'Write a length, for example 24 mm.'],
])('of %s it is said what is out of range', (value, why) => {
  expect(told(value).why).toBe(why);
});

test.each(['+66 mm', '6.6e1 mm', '66.000000000000000 mm'])(
  '%s is read as 66 mm, with a hint at the usual spelling and nothing else',
  (value) => {
    const text = withField(value);
    const core = coreWith(text);
    const plain = coreWith(SOUND);
    expect([...core.figures(PLAN)]).toEqual([...plain.figures(PLAN)]);
    const rules = (of: typeof core) => of.findings(PLAN).map(({ rule }) => rule);
    const [hint] = core.findings(PLAN).filter(({ rule }) => !rules(plain).includes(rule));
    expect(hint?.severity).toBe('hint');
    expect(core.fixesOf(hint!).map(({ edits }) => applied(text, edits))).toEqual([
      withField('66 mm'),
    ]);
  },
);
