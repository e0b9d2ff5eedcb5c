/** Merges that cut a value in two, that hold merges, or that were mended by halves. */
import { expect, test } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';
import { fields } from './support/read-text.ts';

const LINE = '    aperture: f/8\n';

const inSecond = (lines: string): string => {
  const at = SOUND.indexOf(LINE, SOUND.indexOf('  second:'));
  return SOUND.slice(0, at) + lines + SOUND.slice(at + LINE.length);
};

const errorsOf = (text: string) =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule, what, range }) => `${rule} ${range.start.line + 1} ${what}`);

const lineOf = (text: string, start: string): number =>
  text.split('\n').findIndex((line) => line.startsWith(start)) + 1;

const UNFINISHED = 'These lines contain an unresolved merge conflict and are not read.';

const merge = (ours: string, theirs: string): string =>
  `<<<<<<< ours\n${ours}=======\n${theirs}>>>>>>> theirs\n`;

const CUT: readonly [name: string, text: string, doubtful: string][] = [
  [
    'a block of text',
    inSecond(`${LINE}    about: |\n${merge('      one\n', '      two\n')}      three\n`),
    '/shots/second/about',
  ],
  [
    'a text over several lines',
    inSecond(`${LINE}    about: late\n${merge('      sun\n', '      moon\n')}      and more\n`),
    '/shots/second/about',
  ],
  [
    'a quoted text',
    inSecond(`${LINE}    about: "late\n${merge('      sun"\n', '      moon"\n')}`),
    '/shots/second/about',
  ],
  [
    'braces',
    SOUND.replace(
      'at: { distance: 400 mm, elevation: 40 deg }\n',
      `at: {\n${merge('      distance: 400 mm,\n', '      distance: 300 mm,\n')}      elevation: 40 deg }\n`,
    ),
    '/lights/panel/at',
  ],
  [
    'braces and the field behind them',
    SOUND.replace(
      'at: { distance: 400 mm, elevation: 40 deg }\n    colour-temperature: 5600 K\n',
      `at: { distance: 400 mm,\n${merge('      elevation: 40 deg }\n    colour-temperature: 5600 K\n', '      elevation: 30 deg }\n')}`,
    ),
    '/lights/panel/at',
  ],
  [
    'an entry in braces',
    SOUND.replace(
      'plate: { kind: solid, size: 200 x 150 mm,',
      `plate: { kind: solid,\n${merge('    size: 200 x 150 mm,\n', '    size: 20 x 15 mm,\n')}   `,
    ),
    '/subjects/plate',
  ],
];

test.each(CUT)('a merge within %s is one finding, and the value is in doubt', (_, text, path) => {
  expect(errorsOf(text)).toEqual([`syntax ${lineOf(text, '<<<<<<<')} ${UNFINISHED}`]);
  expect(fields(text)).toContain(path);
  // What stands beside the value is read as before.
  const beside = fields(SOUND).filter(
    (field) => !field.startsWith(path) && !field.startsWith('/lights/panel/colour-temperature'),
  );
  expect(fields(text)).toEqual(expect.arrayContaining(beside));
});

test('no check is missing while it is in doubt which there are', () => {
  const line = '    - foot-balanced\n';
  const text = SOUND.replace(line, merge(line, ''));
  expect(errorsOf(text)).toEqual([`syntax ${lineOf(text, '<<<<<<<')} ${UNFINISHED}`]);
});

test.each([
  [
    'in its first half',
    `<<<<<<< a\n<<<<<<< b\n${LINE}=======\n${LINE}>>>>>>> b\n=======\n${LINE}>>>>>>> a\n`,
  ],
  [
    'in what both come from, with longer marks',
    `<<<<<<< a\n${LINE}||||||| base\n<<<<<<<<< b\n${LINE}=========\n${LINE}>>>>>>>>> c\n=======\n${LINE}>>>>>>> d\n`,
  ],
])('a merge within a merge, %s, is one finding over both', (_, lines) => {
  const text = inSecond(lines);
  const [finding, ...others] = coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity === 'error');
  expect(others).toEqual([]);
  const first = lineOf(text, '<<<<<<<') - 1;
  expect(finding?.range.start).toEqual({ line: first, character: 0 });
  expect(finding?.range.end.line).toBe(first + lines.split('\n').length - 2);
});

test('of a merge whose first mark is gone the rest of the shot is read', () => {
  const text = inSecond(`${LINE}=======\n    tilt: 0 deg\n>>>>>>> theirs\n`);
  expect(errorsOf(text)).toEqual([`syntax ${lineOf(text, '=======')} ${UNFINISHED}`]);
  expect(fields(text)).toEqual(
    expect.arrayContaining([
      '/shots/second/iso=1250',
      '/shots/second/tilt',
      '/shots/third/iso=1250',
    ]),
  );
});

test.each(['=======', '>>>>>>> theirs', '==========='])(
  'a mark that was left alone, %s, takes nothing with it',
  (mark) => {
    const text = inSecond(`${LINE}${mark}\n`);
    expect(errorsOf(text)).toEqual([
      `syntax ${lineOf(text, mark)} The text contains a merge conflict marker, ${mark.slice(0, 7)}.`,
    ]);
    expect(fields(text)).toEqual(fields(SOUND));
  },
);
