/**
 * The colours between crossed polarisers along the retardation, read off the drawing. Outside: names of
 * the interference colours by retardation, as textbooks of optical mineralogy print the chart of
 * A. Michel-Lévy (from memory): 0 black, 270 white, 330 yellow, 551 red-violet, 664 blue, 826 green to yellow.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { documentOf, drawing, pageOf } from './support/sheets.ts';

const TITLE = 'Colours between polarisers';
const planWith = (thickness: string, more: Readonly<Record<string, string | null>> = {}) =>
  changed(EXAMPLE_PLAN, {
    'subjects/frost-plate': `{ kind: solid, size: 200 x 150 mm, depth: 0 mm, finish: matt, birefringence: 0.009, thickness: ${thickness} }`,
    'lights/panel':
      '{ kind: led, emitting-size: 300 x 200 mm, at: { distance: 100 mm, azimuth: 180 deg }, colour-temperature: 5600 K, luminance: 3000 cd/m2, polarised: crossed }',
    'kit/filters': '{ pol: { kind: polariser, loss: 1.6 stops } }',
    'shots/frost/filters': '[pol]',
    ...more,
  });

function chartOf(thickness: string) {
  const page = documentOf(pageOf(coreWith(planWith(thickness))));
  const chart = drawing(page, 'frost', TITLE);
  const labels = chart.all('text').map(({ textContent }) => textContent!);
  const end = Number.parseFloat(labels.at(-1)!);
  const strip = chart.all('rect').map((one) => ({
    left: Number(one.getAttribute('x')),
    right: Number(one.getAttribute('x')) + Number(one.getAttribute('width')),
    hex: one.getAttribute('fill')!,
  }));
  const [left, right] = [strip[0]!.left, strip.at(-1)!.right];
  const nmAt = (x: number): number => ((x - left) / (right - left)) * end;
  /** Red, green, blue, 0 to 255. */
  const colourAt = (nm: number): readonly [number, number, number] => {
    const x = left + (nm / end) * (right - left);
    const { hex } = strip.find((one) => x >= one.left && x <= one.right)!;
    return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as unknown as [
      number,
      number,
      number,
    ];
  };
  return { chart, labels, nmAt, colourAt, end };
}

describe('the strip of colours', () => {
  const { chart, labels, nmAt, colourAt, end } = chartOf('30 to 60 um');

  it('has the colours of the usual chart in their places', () => {
    expect(Math.max(...colourAt(0))).toBeLessThan(40);
    const [r, g, b] = colourAt(270);
    expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThan(60);
    expect(Math.min(r, g, b)).toBeGreaterThan(150);
    const yellow = colourAt(330);
    expect(Math.min(yellow[0], yellow[1])).toBeGreaterThan(yellow[2] + 20);
    const violet = colourAt(551);
    expect(Math.min(violet[0], violet[2])).toBeGreaterThan(violet[1] + 40);
    const blue = colourAt(650);
    expect(blue[2]).toBeGreaterThan(Math.max(blue[0], blue[1]));
    const green = colourAt(800);
    expect(green[1]).toBeGreaterThan(Math.max(green[0], green[2]));
  });

  it('has a bracket over what the subject shows: birefringence times thickness', () => {
    const span = (name: string) => chart.at('[data-span=retardation]', name);
    expect(nmAt(span('x1'))).toBeCloseTo(0.009 * 30_000, 0);
    expect(nmAt(span('x2'))).toBeCloseTo(0.009 * 60_000, 0);
    expect(labels).toContain('frost-plate: 270 to 540 nm');
    expect(end).toBe(3 * 550);
  });

  it('says in words what it shows', () => {
    expect(chart.figure.textContent).toContain('frost-plate: 270 to 540 nm, order 1.');
    expect(chart.figure.textContent).toContain('Numbers: orders of colour.');
  });
});

it('reaches to the thickest part of the subject', () => {
  const { labels, end } = chartOf('30 to 400 um');
  expect(end).toBe(7 * 550);
  expect(labels).toContain('7');
});

it('the page of the shot names the sheet on the light, and where the light stands', () => {
  const page = documentOf(pageOf(coreWith(planWith('30 um'))));
  const pages = [...page.querySelectorAll('.shot')].map(({ textContent }) => textContent!);
  const of = pages.find((text) => text.includes(TITLE))!;
  expect(of).toContain('100 mm away and straight behind the subject');
  expect(of).toContain('polarising sheet, crossed with the one on the lens');
  expect(of).not.toContain('180° to the right');
});

describe('there is none', () => {
  const drawingOf = (text: string) =>
    coreWith(text)
      .sheet(PLAN)
      .shots.find(({ name }) => name === 'frost')!
      .drawings.find(({ id }) => id === 'retardation');

  it('of what is not birefringent, or has no polarisers', () => {
    expect(drawingOf(EXAMPLE_PLAN)).toBeUndefined();
    expect(drawingOf(planWith('30 um', { 'shots/frost/filters': '[]' }))).toBeUndefined();
  });

  it('but the reason, where polarisers are not crossed or too much is retarded', () => {
    const thick = drawingOf(planWith('5000 um'));
    expect(thick).toMatchObject({ title: TITLE, picture: null });
    expect(thick!.words).toContain('retardations over 20 µm show no colours');
    const parallel = drawingOf(planWith('30 um', { 'lights/panel/polarised': 'parallel' }));
    expect(parallel!.words).toContain('the polarisers are not crossed');
  });
});
