/** An unclosed quote between brackets: its place, and a fix that closes it where it was meant to. */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

const CLIPS = `${SOUND}clips:\n  first:\n    - { file: a.mp4, verdict: keep }\n`;

const clip = (fields: string): [broken: string, sound: string] => [
  CLIPS.replace('verdict: keep', fields.replaceAll('¦', '')),
  CLIPS.replace('verdict: keep', fields.replace('¦', fields.includes('"') ? '"' : "'")),
];

const inSound = (from: string, to: string): [broken: string, sound: string] => [
  SOUND.replace(from, to.replace('¦', '')),
  SOUND.replace(from, to.replace('¦', to.includes('"') ? '"' : "'")),
];

/** ¦ marks where the fix closes it. */
const cases: readonly [name: string, texts: [broken: string, sound: string]][] = [
  ['a last value', inSound('elevation: 40 deg }', 'elevation: "40 deg¦ }')],
  ['a first value', inSound('{ distance: 400 mm,', '{ distance: "400 mm¦,')],
  ['an item', inSound('[body-a, tube-20,', '[body-a, "tube-20¦,')],
  ['a last item within braces', inSound('macro-100] }', "'macro-100¦] }")],
  ['a value with a comma', clip('note: "best after 40 s, then dull¦')],
  ['a value with a comma before another field', clip('note: "best, then dull¦, verdict: keep')],
  ['a value with brackets', clip("verdict: keep, note: 'best [after 40 s], then dull¦")],
  [
    'a value with brackets before another field',
    clip('note: "best [so far], dull¦, verdict: keep'),
  ],
  ['a key', clip('"verdict¦: keep')],
  ['a value before one in quotes', clip('note: "best¦, verdict: "keep"')],
  [
    'a value before a comment with quotes',
    inSound('elevation: 40 deg }', 'elevation: "40 deg¦ } # or "x"'),
  ],
];

test('each is one error, and the fix closes it', () => {
  each(cases, ([_, [broken, sound]]) => {
    const core = coreWith(broken);
    const errors = core.findings(PLAN).filter(({ severity }) => severity === 'error');
    expect(errors.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^The quote ["'] is not closed\.$/),
    ]);
    const [at] = errors.map(({ range }) => range);
    const line = broken.split('\n')[at!.start.line]!;
    expect(line[at!.start.character]).toBe(line.match(/["']/)![0]);
    expect(core.fixesOf(errors[0]!).map(({ edits }) => applied(broken, edits))).toEqual([sound]);
  });
});

test('no fix is offered where closing it anywhere makes no plan', () => {
  const broken = SOUND.replace('elevation: 40 deg }', 'elevation: "forty, }');
  const core = coreWith(broken);
  const [error] = core.findings(PLAN).filter(({ severity }) => severity === 'error');
  expect(error?.what).toContain('is not closed');
  expect(core.fixesOf(error!)).toEqual([]);
});
