/** Every problem that reading a plan can meet has words of its own, and every fix a title. */
import { describe, expect, it } from 'vitest';
import type { Refusal } from '../../shared/api/facade.ts';
import type { Failure } from '../../shared/quantity/kind.ts';
import { ruleNamed } from '../../shared/rules/registry.ts';
import { FIX_CODES, fixTitle } from '../../shared/rules/text/fix-words.ts';
import { Say } from '../../shared/say/say.ts';
import type { Foreign } from '../../shared/text/from-yaml.ts';
import type { Wording } from '../../shared/text/problem.ts';
import type { UseTarget } from '../../shared/workspace/use-path.ts';
import { each } from '../support/each.ts';
import { inPseudo, untranslated } from '../support/pseudo.ts';
import { read, sharedSources, withoutComments } from './support/project.ts';

/** The codes of a union, whole: the compiler refuses a list that lacks one. */
const codes = <T extends string>(all: Readonly<Record<T, true>>): readonly string[] =>
  Object.keys(all);

const FOREIGN = codes<Foreign['what']>({
  anchor: true,
  alias: true,
  tag: true,
  merge: true,
  'complex-key': true,
  'empty-key': true,
});
const REFUSED = codes<Refusal | Extract<UseTarget, { ok: false }>['why']>({
  'not-found': true,
  'outside-workspace': true,
  'not-a-path': true,
  'too-large': true,
  'not-text': true,
  unreadable: true,
});
const UNIT = ['no-unit', 'unknown-unit'] satisfies Failure['code'][];
const QUANTITY = ['not-a-number', 'form', 'out-of-range', 'not-whole'] satisfies Failure['code'][];

/**
 * Places that say a code which is worked out: `file expression`, with what it can be. Where the
 * expression is new, the test below asks for a line here.
 */
const WORKED_OUT: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  'shared/text/foreign.ts what': { 'outside-the-profile': FOREIGN },
  'shared/text/line-defects.ts oddity': { 'outside-the-profile': ['document-marker', 'directive'] },
  'shared/text/recovery.ts isAnchor': { 'outside-the-profile': ['anchor', 'tag'] },
  'shared/plan/shape-problems.ts code': {
    'wrong-value': ['not-a-list', 'not-a-mapping', 'not-a-value'],
  },
  'shared/plan/shape-problems.ts failure.code': {
    unit: UNIT,
    'wrong-value': QUANTITY,
    'misread-scalar': ['decimal-comma'] satisfies Failure['code'][],
  },
  'shared/plan/unknown-key.ts code': { 'unknown-key': ['unknown-key', 'belongs-elsewhere'] },
  'shared/workspace/duplicates.ts across': {
    'duplicate-name': ['duplicate-across', 'duplicate-part'],
  },
  'shared/workspace/file-findings.ts use.target.why': { 'use-not-found': REFUSED },
  'shared/workspace/file-findings.ts state.why': { 'use-not-found': REFUSED },
  'shared/rules/rig-parts.ts CODE_OF[fault.kind]': {
    'wrong-value': ['no-body', 'no-lens', 'part-out-of-place', 'part-impossible'],
  },
};

const RULE_OF_CALL: Readonly<Record<string, string>> = {
  syntax: 'syntax',
  misread: 'misread-scalar',
  tooMuch: 'too-much',
  outside: 'outside-the-profile',
};

/** problems.syntax('tab', …) · problem('unit', 'no-unit', …) · { rule: 'unit', code: 'no-unit' } */
const SAID =
  /\bproblems\.(?<call>syntax|misread|outside|tooMuch)\(\s*(?<code1>[^,\s]+)|\bproblem\(\s*(?<rule2>'[a-z-]+'|RULE_OF[^,]*),\s*(?<code2>[^,\s)]+)|\brule: (?<rule3>'[a-z-]+'),\s*code: (?<code3>[^,\s}]+)/g;

const bare = (written: string): string => written.replaceAll("'", '');

interface Said {
  readonly file: string;
  readonly rule: string;
  readonly code: string;
}

const said: readonly Said[] = sharedSources.flatMap((file) =>
  [...withoutComments(read(file)).matchAll(SAID)].map(({ groups = {} }) => {
    const { call, code1, rule2, code2, rule3, code3 } = groups;
    const rule = call ? (RULE_OF_CALL[call] ?? '') : bare(rule2 ?? rule3 ?? '');
    return { file, rule, code: code1 ?? code2 ?? code3 ?? '' };
  }),
);

const isWritten = ({ code }: Said): boolean => /^'[a-z0-9-]+'$/.test(code);

const pairs: ReadonlySet<string> = new Set([
  ...said.filter(isWritten).map(({ rule, code }) => `${rule} ${bare(code)}`),
  ...Object.values(WORKED_OUT).flatMap((byRule) =>
    Object.entries(byRule).flatMap(([rule, all]) => all.map((code) => `${rule} ${code}`)),
  ),
]);

it('every place that says a code which is not written there is known', () => {
  const places = said
    .filter((one) => !isWritten(one))
    .map(({ file, code }) => `${file} ${code}`)
    .sort();
  expect([...new Set(places)]).toEqual(Object.keys(WORKED_OUT).sort());
});

/** Whatever a wording asks for is there. */
const ARGS: Wording['args'] = new Proxy({}, { get: () => 'x' });

describe('the words of', () => {
  it('stand where they are said', () => {
    each(
      [...pairs].sort().map((pair) => pair.split(' ') as [string, string]),
      ([name, code]) => {
        const rule = ruleNamed(name);
        expect(rule, 'is a rule').toBeDefined();
        const { what } = rule!.words({ code, args: ARGS }, new Say());
        // What has no words of its own is told by its code in brackets.
        expect(what).not.toContain(`(${code})`);
        expect(what).toMatch(/^\S.*[.?!x]$/);
      },
      ([name, code]) => `${name} ${code}`,
    );
  });

  it('can be translated', () => {
    each(
      [...pairs].sort().map((pair) => pair.split(' ') as [string, string]),
      ([name, code]) => {
        const { what, why = '' } = inPseudo(() =>
          ruleNamed(name)!.words({ code, args: ARGS }, new Say()),
        );
        expect(untranslated(`${what} ${why}`, '')).toEqual([]);
      },
      ([name, code]) => `${name} ${code}`,
    );
  });
});

/** fix('quote', …) · fix(isAnchor ? 'remove-anchor' : 'remove-tag', …) · fixOf('indent', args, edits) */
const FIX = /\bfix(?:Of)?\(\s*(?:[^,?']+\? )?'(?<one>[a-z-]+)'(?: : '(?<other>[a-z-]+)')?/g;

describe('titles of fixes', () => {
  const given = sharedSources
    .filter((file) => file.startsWith('shared/text/'))
    .flatMap((file) => [...withoutComments(read(file)).matchAll(FIX)])
    .flatMap(({ groups = {} }) => [groups.one, groups.other])
    .filter((code): code is string => code !== undefined);

  it('all can be translated', () => {
    each(FIX_CODES, (code) => {
      const title = inPseudo(() => fixTitle({ code, args: {} }));
      expect(untranslated(title, '')).toEqual([]);
    });
  });

  it('every fix has one, and no title is left over', () => {
    expect([...new Set(given)].sort()).toEqual([...FIX_CODES].sort());
  });
});
