/**
 * Blanks that look like spaces and are none, and byte order marks, where a line begins: from web
 * pages, word processors, and files put one behind the other. One finding names them, its fix gives
 * the sound plan, and what is around them is read.
 */
import { expect, test } from 'vitest';
import { fixAll } from '../../server/handlers/fix-all.ts';
import { each } from '../support/each.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';
import { fields } from './support/read-text.ts';

const errorsOf = (text: string) =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity === 'error');

const inSecond = (line: string, by: string): string => {
  const at = SOUND.indexOf(line, SOUND.indexOf('  second:'));
  return SOUND.slice(0, at) + by + SOUND.slice(at + line.length);
};

const LINE = '    aperture: f/8';
const NO_BREAK = '\u00a0';

const cases: readonly [name: string, text: string, line: string][] = [
  ['no-break spaces', inSecond(LINE, LINE.replaceAll('    ', NO_BREAK.repeat(4))), 'aperture'],
  [
    'spaces of both kinds',
    inSecond(LINE, LINE.replace('    ', ` ${NO_BREAK} ${NO_BREAK}`)),
    'aperture',
  ],
  ['wide spaces', inSecond(LINE, LINE.replace('    ', '\u3000'.repeat(4))), 'aperture'],
  [
    'no-break spaces before every field',
    SOUND.replace(/(?<= {2}second:\n)(.*\n)+(?= {2}third:)/, (all) =>
      all.replace(/^ {4}/gm, NO_BREAK.repeat(4)),
    ),
    'subject',
  ],
  [
    'no-break spaces before a name',
    SOUND.replace('  second:', `${NO_BREAK}${NO_BREAK}second:`),
    'second',
  ],
  ['a no-break space behind a colon', inSecond(LINE, `    aperture:${NO_BREAK}f/8`), 'aperture'],
  [
    'a no-break space behind a key of the plan',
    SOUND.replace('mains: ', `mains:${NO_BREAK}`),
    'mains',
  ],
  [
    'a no-break space behind a colon in braces',
    SOUND.replace('{ distance: 400', `{ distance:${NO_BREAK}400`),
    'at',
  ],
  ['a byte order mark before a field', inSecond(LINE, `\ufeff${LINE}`), 'aperture'],
  ['a byte order mark before a name', SOUND.replace('  second:', '\ufeff  second:'), 'second'],
  ['a byte order mark before a section', SOUND.replace('shots:', '\ufeffshots:'), 'shots'],
];

test('each odd blank is told and offered as a plain one', () => {
  each(cases, ([_, text, key]) => {
    expect(text).not.toBe(SOUND);
    const [finding, ...others] = errorsOf(text);
    expect(others.map(({ what }) => what)).toEqual([]);
    const lines = text.split('\n');
    expect(lines[finding!.range.start.line]).toContain(`${key}:`);
    // All that is sound is read, in the line itself too.
    expect(fields(text)).toEqual(fields(SOUND));
    const core = coreWith(text);
    const fixes = core.fixesOf(core.findings(PLAN).find(({ what }) => what === finding!.what)!);
    expect(fixes.map(({ edits }) => applied(text, edits))).toContain(SOUND);
    expect(applied(text, fixAll(core, PLAN))).toBe(SOUND);
  });
});

test('what looks like a space within a text is left alone', () => {
  for (const lines of [
    `    about: late${NO_BREAK}sun`,
    `    about: |\n      ${NO_BREAK}late\n      sun:${NO_BREAK}low`,
    `    about: "late\n      ${NO_BREAK}sun"`,
  ])
    expect(errorsOf(inSecond(LINE, `${LINE}\n${lines}`))).toEqual([]);
});
