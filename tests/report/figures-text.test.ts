import { expect, it } from 'vitest';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { figureLabel, figuresDocument } from '../../shared/report/figures-text.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { withEdit } from '../support/edits.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const lines = (change: Readonly<Record<string, string | null>> = {}): readonly string[] => {
  const figures = coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN);
  return terminalText(figuresDocument('plan', figures, [], null, null, new Say()), false).split(
    '\n',
  );
};

const lineOf = (label: string, of: readonly string[]): string =>
  of
    .find((line) => line.startsWith(`  ${label} `))
    ?.slice(label.length + 2)
    .trim() ?? '';

it('gives every part of a figure its unit', () => {
  expect(lineOf('needed light', lines())).toMatch(
    /^up [\d.]+°, across [\d.]+°, width [\d.]+ mm, height [\d.]+ mm$/,
  );
});

it('shows colours by their thickness and code, without their co-ordinates', () => {
  const colours = lineOf('film colours', lines({ 'subjects/soap/thickness': '100 to 600 nm' }));
  expect(colours).toMatch(/^swatches (\d+ nm #[0-9a-f]{6}, )+bands /);
  expect(colours).toMatch(/bands .*order 1 \d+ nm \d+ nm/);
});

it('names the numbers of what has many', () => {
  const bubble = '{ kind: bubble, diameter: 60 mm, lifetime: 20 s }';
  const out = lines({ 'subjects/soap': bubble, 'shots/skin/field': '60 mm' });
  const at = out.findIndex((line) => line.startsWith('  bubble images '));
  const first = out[at]!;
  // One image a line, under the first.
  const column = first.search(/\S+ (front|rear) x /);
  const images = out.slice(at, at + 4).map((line) => line.slice(column));
  for (const image of images)
    expect(image).toMatch(
      /^\S+ (front|rear) x [-\u2212]?[\d.]+ pixels y \S+ pixels width [\d.]+ pixels/,
    );
  expect(images.map((image) => image.split(' x ')[0])).toEqual(
    expect.arrayContaining(['strip front', 'strip rear']),
  );
  expect(out[at + 4]!.slice(0, column).trim()).not.toBe('');
});

it('says of a stack that what one frame needs is not what the subject needs', () => {
  const stack = { 'shots/skin': null, 'shots/frost/stack': '{ with: rail, settle: 2 s }' };
  expect(lineOf('depth', lines(stack))).toMatch(
    /needed 0 mm by one frame; the stack covers the subject$/,
  );
  expect(lines().join()).not.toContain('by one frame');
});

it('gives speeds in mm/s and the shutter as it is set', () => {
  const moving = lines({ 'shots/frost/subject-speed': '2 mm/s' });
  expect(moving.filter((line) => line.includes('subject speed')).join()).toContain('2 mm/s');
  expect(lineOf('shutter', moving)).toBe('1/50 s');
  const from = moving.indexOf('frost');
  const labels = moving
    .slice(from, moving.indexOf('', from))
    .flatMap((line) => /^ {2}(\S.*?) {2}/.exec(line)?.[1] ?? []);
  // One figure in two units, length and bytes of the takes, needs two labels.
  expect(new Set(labels).size).toBe(labels.length);
});

it('names figures that wait for the same together', () => {
  const out = lines({ 'shots/skin': null, 'shots/frost/field': '6 mm' });
  const reason = "  unknown: the rig can't frame the field of the shot";
  expect(out.filter((line) => line.includes('the field of the shot'))).toEqual([reason]);
  const waiting = out
    .slice(out.indexOf(reason) + 1)
    .join(' ')
    .replace(/\s+/g, ' ');
  for (const figure of ['magnification', 'depth', 'effective f-number'])
    expect(waiting).toContain(`${figure},`);
  expect(out.some((line) => line.startsWith('  depth '))).toBe(false);
});

it('says that a tilt window is shut', () => {
  const shut = lines({ 'shots/skin/aperture': 'f/2.8' });
  expect(lineOf('tilt window', shut)).toMatch(
    /^none: the lens needs at least [\d.]+°, the depth of field allows at most [\d.]+°/,
  );
});

it('lays the edit out in columns, a cut a line', () => {
  const core = coreWith(
    withEdit([
      'one: { shot: skin, from: 2 s, duration: 1 bar }',
      'two: { shot: frost, duration: 40 s, speed: 100 to 50 %, transition: dissolve 12 frames }',
      'three: { shot: skin }',
    ]),
  );
  const text = terminalText(
    figuresDocument('plan', new Map(), [], core.editFigures(PLAN), null, new Say()),
    false,
  );
  expect(text.split('\n').slice(2, 7)).toEqual([
    'edit: unknown: needs `duration` of three',
    '  start        length       cut    shows  begins with         speed       clip used                  beat',
    '  00:00:00:00  67 frames    one    skin   cut                 100%        take 1, 2 s to 4.67 s      on',
    // Of 20 s 19.76 are left, used up after 80·(1 − √(1 − 19.76/40)) = 23.09 s of 40.
    '  00:00:02:17  1000 frames  two    frost  dissolve 12 frames  100 to 50%  take 1, 0.24 s to 30.24 s  on    repeats frames, 423 frames uncovered',
    '  unknown      unknown      three  skin   cut                 100%        unknown                          needs `duration` of three',
  ]);
});

it('calls a part of a figure by both names, without the unit between', () => {
  expect(figureLabel('depthMm.needed')).toBe('depth needed');
});

it('gives the fields of a focus pull as sizes', () => {
  const move = '{ kind: focus-pull, from: 0.6 m, to: 0.35 m }';
  const pull = lineOf('focus pull, fields', lines({ 'shots/frost/move': move }));
  expect(pull).toMatch(/^[\d.]+ mm × [\d.]+ mm to [\d.]+ mm × [\d.]+ mm$/);
});
