/** A tab before an entry's name: one problem, and the entries around it are read as they stand. */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { fields, problemsOf } from './support/read-text.ts';

const HEAD = { shots: 'shots:\n', lenses: 'kit:\n  lenses:\n' };

const plan = (section: keyof typeof HEAD, tabbed: number, tab: string): string => {
  const column = section === 'shots' ? 2 : 4;
  const entries = ['one', 'two', 'three'].map((name, index) => {
    const indent = index === tabbed ? tab : ' '.repeat(column);
    const within = ' '.repeat(column + 2);
    return `${indent}${name}:\n${within}iso: ${index}\n${within}take:\n${within}  count: 2\n`;
  });
  return HEAD[section] + entries.join('');
};

const cases = (['shots', 'lenses'] as const).flatMap((section) =>
  [0, 1, 2].flatMap((tabbed) =>
    ['\t', '\t\t', '  \t'].flatMap((tab) =>
      ['\n', '\r\n'].map((eol) => ({ section, tabbed, tab, eol })),
    ),
  ),
);

test('whichever entry it stands in', () => {
  each(cases, ({ section, tabbed, tab, eol }) => {
    const text = plan(section, tabbed, tab).replaceAll('\n', eol);
    const sound = plan(section, -1, '').replaceAll('\n', eol);
    expect(fields(text)).toEqual(fields(sound));
    const [{ at, problem }, ...others] = problemsOf(text) as [ReturnType<typeof problemsOf>[0]];
    expect(others).toEqual([]);
    expect(problem.code).toBe('tab');
    const name = text.indexOf(['one', 'two', 'three'][tabbed]!);
    expect(text.slice(at + problem.at.start, name)).toMatch(/^\t+$/);
    const [edit] = problem.fixes[0]!.edits as [
      { span: { start: number; end: number }; text: string },
    ];
    const fixed = text.slice(0, at + edit.span.start) + edit.text + text.slice(at + edit.span.end);
    expect(fixed).toBe(sound);
  });
});

test('a field that a tab indents stays a field', () => {
  for (const field of ['\ttilt: 4 deg', '\ttake:\n      count: 2', '\ttake:'])
    expect(
      fields(`shots:\n  one:\n    rig: a\n${field}\n    iso: 1\n  two:\n    iso: 2\n`).map((each) =>
        each.split('=')[0]!.split('/').slice(0, 3).join('/'),
      ),
    ).toEqual(['/shots/one', '/shots/one', '/shots/one', '/shots/two']);
});
