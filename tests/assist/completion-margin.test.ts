/** New entries offered at a line's start: indented as their section is, and whole as they stand. */
import { describe, expect, it } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';
import { BENCH } from './support/bench.ts';

/** The items at the end of `before`, and the text that an item leaves. */
function at(before: string, after = '') {
  const lines = before.split('\n');
  const position = { line: lines.length - 1, character: lines.at(-1)!.length };
  const { items } = coreWith(before + after).completions(PLAN, position);
  const take = (label: string): string => {
    const { range, text } = items.find((item) => item.label === label)!;
    const kept = [...lines.slice(0, -1), lines.at(-1)!.slice(0, range.start.character)].join('\n');
    return kept + text + after;
  };
  return { labels: items.map(({ label }) => label), take };
}

const upTo = (mark: string): readonly [string, string] => {
  const index = BENCH.indexOf(mark);
  return [BENCH.slice(0, index), `\n${BENCH.slice(index)}`];
};

const SECTIONS: readonly (readonly [
  label: string,
  mark: string,
  count: (text: string) => number,
])[] = [
  ['new lens', '  converters:', (text) => text.match(/focal-length:/g)!.length],
  ['new rig', 'lights:', (text) => text.match(/parts:/g)!.length],
  ['new light', 'subjects:', (text) => text.match(/illuminance:|luminance:|reading:/g)!.length],
];

describe('at the margin', () => {
  it('is offered a new shot behind the keys of the plan', () => {
    const { labels, take } = at(BENCH);
    expect(labels.at(-1)).toBe('new shot');
    expect(labels).toContain('edit');
    const text = take('new shot');
    const core = coreWith(text);
    expect([...core.figures(PLAN).keys()]).toHaveLength(3);
    expect(core.findings(PLAN).filter(({ severity }) => severity === 'error')).toEqual(
      coreWith(BENCH)
        .findings(PLAN)
        .filter(({ severity }) => severity === 'error'),
    );
  });

  it('finds it by its letters', () => {
    const { take } = at(`${BENCH}sh`);
    expect(take('new shot').slice(0, BENCH.length)).toBe(BENCH);
    expect(take('new shot').slice(BENCH.length)).toMatch(/^ {2}[a-z]/);
  });

  it.each(SECTIONS)('is offered a %s below its section', (label, mark, count) => {
    const [before, after] = upTo(mark);
    const text = at(before, after).take(label);
    expect(count(text)).toBe(count(BENCH) + 1);
    const rules = coreWith(text)
      .findings(PLAN)
      .map(({ rule }) => rule);
    expect(
      rules.filter((rule) => ['syntax', 'unknown-key', 'duplicate-name'].includes(rule)),
    ).toEqual([]);
  });

  it('is offered a first one under a heading that has none', () => {
    const text = at('shootplan: 1\nsubjects:\n').take('new subject');
    expect(
      coreWith(text)
        .findings(PLAN)
        .map(({ rule }) => rule),
    ).not.toContain('syntax');
    expect(text).toMatch(/^subjects:\n {2}[a-z-]+:/m);
  });

  it.each([
    ['a plain key above', 'shootplan: 1\ntitle: Frost\n'],
    ['a section in brackets', 'shootplan: 1\nsubjects: { one: { kind: solid } }\n'],
    ['nothing above', ''],
    ['a shot without subject and rig', 'shootplan: 1\nshots:\n'],
  ])('is offered none with %s', (_, text) => {
    expect(
      at(text).labels.filter((label) => label.startsWith('new ') && label !== 'new plan'),
    ).toEqual([]);
  });
});
