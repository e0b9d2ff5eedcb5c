import { expect, it } from 'vitest';
import { figuresText } from '../../shared/report/figures-text.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const lines = (change: Readonly<Record<string, string | null>> = {}): readonly string[] => {
  const figures = coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN);
  return figuresText('plan', figures, [], { colour: false }).split('\n');
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
  const bubble = '{ kind: bubble, diameter: 60 mm, lasts: 20 s }';
  const images = lineOf(
    'bubble images',
    lines({ 'subjects/soap': bubble, 'shots/skin/field': '60 mm' }),
  );
  expect(images).toMatch(/strip front x -?[\d.]+ pixels y -?[\d.]+ pixels width [\d.]+ pixels/);
});
