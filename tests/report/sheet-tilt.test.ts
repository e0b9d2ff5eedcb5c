/** Tilt against working distance: the shaded window is that of the figures, at every distance. */
import { describe, expect, it } from 'vitest';
import { changed, PLAN } from '../support/plans.ts';
import { documentOf, drawing, pageOf, sampleCore, samples } from './support/sheets.ts';

const text = samples.find(([name]) => name.startsWith('tide'))![1];
const TITLE = 'Tilt and working distance';

type Spot = readonly [number, number];

function chartOf(plan: string, shot: string) {
  const core = sampleCore(plan);
  const chart = drawing(documentOf(pageOf(core)), shot, TITLE);
  const figures = core.figures(PLAN).get(shot) as unknown as {
    workingDistanceMm: number;
    tiltWindowDeg: [number, number];
  };
  // Both scales by their ticks.
  const grid = chart.all('line.grid');
  const labels = chart.all('text').map(({ textContent }) => textContent!);
  const up = grid
    .filter((one) => one.getAttribute('y1') === one.getAttribute('y2'))
    .map((one) => Number(one.getAttribute('y1')));
  const mm = labels.flatMap((one) => (/^\d+ mm$/.test(one) ? [Number.parseInt(one, 10)] : []));
  const across = grid
    .filter((one) => one.getAttribute('x1') === one.getAttribute('x2'))
    .map((one) => Number(one.getAttribute('x1')));
  const deg = labels.flatMap((one) => (/^\d+°$/.test(one) ? [Number.parseInt(one, 10)] : []));
  const distance = (y: number): number =>
    mm[0]! + ((y - up[0]!) / (up.at(-1)! - up[0]!)) * (mm.at(-1)! - mm[0]!);
  const tilt = (x: number): number =>
    ((x - across[0]!) / (across.at(-1)! - across[0]!)) * deg.at(-1)!;
  const outline = chart
    .points('[data-window=by-distance]')
    .map(([x, y]): Spot => [tilt(x), distance(y)]);
  return { chart, figures, outline, distance, tilt };
}

/** Where the outline crosses a distance, from the smallest tilt on. */
const crossings = (outline: readonly Spot[], mm: number): readonly number[] =>
  outline
    .flatMap(([a, from], index) => {
      const [b, to] = outline[(index + 1) % outline.length]!;
      if (from === to || mm < Math.min(from, to) || mm >= Math.max(from, to)) return [];
      return [a + ((b - a) * (mm - from)) / (to - from)];
    })
    .sort((a, b) => a - b);

const SHOT = 'bands-falling';
const shown = chartOf(text, SHOT);

describe('the shaded window', () => {
  it('is that of the figures where the shot is set, with the mark in it', () => {
    const { chart, figures, outline, distance, tilt } = shown;
    const [least, greatest] = crossings(outline, figures.workingDistanceMm);
    expect(least).toBeCloseTo(figures.tiltWindowDeg[0], 1);
    expect(greatest).toBeCloseTo(figures.tiltWindowDeg[1], 1);
    expect(distance(chart.at('[data-mark=set]', 'cy'))).toBeCloseTo(figures.workingDistanceMm, -1);
    expect(tilt(chart.at('[data-mark=set]', 'cx'))).toBeCloseTo(6, 1);
  });

  it('is that of the same shot framed wider', () => {
    const { outline } = shown;
    const wider = sampleCore(changed(text, { [`shots/${SHOT}/field`]: '90 mm' }))
      .figures(PLAN)
      .get(SHOT) as unknown as { workingDistanceMm: number; tiltWindowDeg: [number, number] };
    const [least, greatest] = crossings(outline, wider.workingDistanceMm);
    // Between two distances that are drawn the curve is straight.
    expect(Math.abs(least! - wider.tiltWindowDeg[0])).toBeLessThan(0.1);
    expect(Math.abs(greatest! - wider.tiltWindowDeg[1])).toBeLessThan(0.1);
  });

  it('is empty where no tilt hides the lens at any distance', () => {
    const shallow = changed(text, { [`shots/${SHOT}/aperture`]: 'f/2.8' });
    const { chart } = { chart: drawing(documentOf(pageOf(sampleCore(shallow))), SHOT, TITLE) };
    expect(chart.all('[data-window=by-distance]')).toHaveLength(0);
    expect(chart.figure.textContent).toContain('At none of them a tilt hides the lens');
  });
});

it('the lens is hidden from the tilt that the law of reflection asks for', () => {
  // A mirror turned by t turns the reflected ray by 2t: seen from the edge of the frame, the rim of 82 mm
  // has to be passed, and the slant of the ray from there. Paraxial, with a pupil of no size to 20 mm.
  const { chart, tilt, distance } = shown;
  const widths = [...chart.figure.textContent!.matchAll(/frame ([\d.]+) mm wide/g)];
  const lens = chart.points('[data-curve=lens]').map(([x, y]): Spot => [tilt(x), distance(y)]);
  for (const [[deg, mm], width] of [
    [lens[0]!, widths[0]!],
    [lens.at(-1)!, widths[1]!],
  ] as const) {
    const high = (Number(width[1]) * 9) / 16;
    const turned = 2 * mm * Math.tan((deg * Math.PI) / 180);
    expect(turned).toBeGreaterThan(82 / 2 + high / 2);
    expect(turned).toBeLessThan(82 / 2 + high + 20);
  }
});
