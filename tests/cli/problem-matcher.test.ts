/** What the editor's problem matcher reads of `lamella check` in a task. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { folderWith, lamella } from './support.ts';

interface Pattern {
  readonly regexp: string;
  readonly [group: string]: string | number;
}

const { contributes } = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
);
const [first, second]: readonly Pattern[] = contributes.problemMatchers[0].pattern;

/** As the editor goes about it: each line in turn against the patterns in their order. */
const read = (out: string) => {
  const lines = out.split('\n');
  return lines.flatMap((line, index) => {
    const [one, two] = [
      new RegExp(first!.regexp).exec(line),
      new RegExp(second!.regexp).exec(lines[index + 1] ?? ''),
    ];
    if (!one || !two) return [];
    const of = (found: RegExpExecArray, pattern: Pattern, group: string) =>
      found[Number(pattern[group])];
    return [
      [
        ...['severity', 'message', 'code'].map((group) => of(one, first!, group)),
        ...['file', 'line', 'column'].map((group) => of(two, second!, group)),
      ],
    ];
  });
};

it('finds every finding with its place', async () => {
  const folder = folderWith({
    'a.shootplan.yaml': 'title: x\n    aperture: !priced soft, related (fix: f/11)\n',
    'b c/d.shootplan.yaml': 'a: !error x\nb: !hint z\n',
  });
  const { out } = await lamella(folder, ['check']);
  expect(read(out)).toEqual([
    ['warning', 'soft, related', 'told-to', 'a.shootplan.yaml', '2', '15'],
    ['error', 'x', 'told-to', 'b c/d.shootplan.yaml', '1', '4'],
    ['hint', 'z', 'told-to', 'b c/d.shootplan.yaml', '2', '4'],
  ]);
});
