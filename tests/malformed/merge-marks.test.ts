/** Marks of an unfinished merge: what they are told as, and what is read around them. */
import { expect, test } from 'vitest';
import { fields, problemsOf } from './support/read-text.ts';

test('a merge inside an entry is one problem, and what is around it is read', () => {
  const merge = [
    '<<<<<<< ours',
    '    iso: 1',
    '    take:',
    '      count: 2',
    '||||||| base',
    '    iso: 3',
    '=======',
    '    iso: 4',
    '    flow: 5',
    '>>>>>>> theirs',
  ].join('\n');
  for (const eol of ['\n', '\r\n']) {
    const text = `shots:\n  a:\n    rig: b\n${merge}\n    tilt: 6\n  c:\n    iso: 7\n`.replaceAll(
      '\n',
      eol,
    );
    const found = problemsOf(text);
    expect(found.map(({ problem }) => problem.code)).toEqual(['unfinished-merge']);
    const known = ['/shots/a/rig=b', '/shots/a/tilt=6', '/shots/c/iso=7'];
    expect(fields(text).filter((field) => field.includes('='))).toEqual(known);
    expect(fields(text)).toHaveLength(known.length + ['iso', 'take', 'flow'].length);
  }
});

test('merge markers are named each, and what is around them is read', () => {
  const text =
    'shots:\n  a: {}\n<<<<<<< ours\n  b:\n    iso: 1\n=======\n  b:\n    iso: 2\n>>>>>>> theirs\n  c:\n    iso: 3\n';
  expect(problemsOf(text).map(({ problem }) => problem.code)).toEqual(
    Array(3).fill('conflict-marker'),
  );
  expect(fields(text)).toEqual(['/shots/b/iso=1', '/shots/b/iso=2', '/shots/c/iso=3']);
});
