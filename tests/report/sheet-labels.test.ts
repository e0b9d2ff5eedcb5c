/** No label of a drawing lies on another, and no line runs through one. */
import { describe, expect, it } from 'vitest';
import type { Child, Drawing, Element } from '../../shared/api/drawing.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { sampleCore, samples } from './support/sheets.ts';

type Point = readonly [x: number, y: number];
type Segment = readonly [Point, Point];

interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Advance of a character of 12 units: 7 in the wide sans-serifs, 6 in the narrow ones. */
const WIDE = 7;
const NARROW = 6;

const elementsIn = (child: Child): readonly Element[] =>
  child && typeof child !== 'string' ? [child, ...child.children.flatMap(elementsIn)] : [];

const all = ({ picture }: Drawing): readonly Element[] => picture?.shapes.flatMap(elementsIn) ?? [];

const number = ({ attributes }: Element, name: string): number => Number(attributes[name]);

const boxesOf = (elements: readonly Element[], advance: number): readonly Box[] =>
  elements
    .filter(({ tag }) => tag === 'text')
    .map((one) => {
      const text = String(one.children[0]);
      const width = [...text].length * advance;
      const { class: anchor } = one.attributes;
      const x = number(one, 'x');
      const left = anchor === 'from' ? x : anchor === 'to' ? x - width : x - width / 2;
      const y = number(one, 'y');
      // Capitals of 12 units are 8 to 9 high.
      return { text, left, right: left + width, top: y - 8, bottom: y + 1 };
    });

function segmentsOf(one: Element): readonly Segment[] {
  const [x, y] = [number(one, 'x'), number(one, 'y')];
  const closed = (points: readonly Point[]): readonly Segment[] =>
    points.map((point, index) => [point, points[(index + 1) % points.length]!]);
  switch (one.tag) {
    case 'line':
      return [
        [
          [number(one, 'x1'), number(one, 'y1')],
          [number(one, 'x2'), number(one, 'y2')],
        ],
      ];
    case 'rect': {
      const [right, bottom] = [x + number(one, 'width'), y + number(one, 'height')];
      return closed([
        [x, y],
        [right, y],
        [right, bottom],
        [x, bottom],
      ]);
    }
    case 'polyline':
    case 'polygon': {
      const points = String(one.attributes.points)
        .split(' ')
        .map((pair) => pair.split(',').map(Number) as [number, number]);
      return one.tag === 'polygon' ? closed(points) : closed(points).slice(0, -1);
    }
    default:
      return [];
  }
}

/** Sampled finely: another way than the one that places labels. */
const runsThrough = ([[x1, y1], [x2, y2]]: Segment, box: Box): boolean => {
  const steps = Math.ceil(Math.hypot(x2 - x1, y2 - y1) * 2) + 1;
  return Array.from({ length: steps + 1 }, (_, step) => step / steps).some((part) => {
    const [x, y] = [x1 + (x2 - x1) * part, y1 + (y2 - y1) * part];
    return x > box.left && x < box.right && y > box.top && y < box.bottom;
  });
};

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const drawingsOf = (core: ReturnType<typeof coreWith>): readonly Drawing[] =>
  core.sheet(PLAN).shots.flatMap(({ drawings }) => drawings);

const ofSamples = samples.flatMap(([, text]) => drawingsOf(sampleCore(text)));

function expectClear(drawing: Drawing): void {
  const elements = all(drawing);
  const wide = boxesOf(elements, WIDE);
  const pairs = wide.flatMap((a, index) =>
    wide
      .slice(index + 1)
      .flatMap((b) => (meet(a, b) ? [`${drawing.id}: ${a.text} | ${b.text}`] : [])),
  );
  expect(pairs).toEqual([]);
  const segments = elements.flatMap(segmentsOf);
  const crossed = boxesOf(elements, NARROW).filter((box) =>
    segments.some((one) => runsThrough(one, box)),
  );
  expect(crossed.map(({ text }) => `${drawing.id}: ${text}`)).toEqual([]);
}

describe('labels lie on nothing', () => {
  it('in the drawings of every sample', () => {
    expect(ofSamples.filter(({ picture }) => picture).length).toBeGreaterThan(150);
    each(ofSamples, expectClear);
  });

  it.each([
    ['an aperture at the end of the lens', { 'shots/frost/aperture': 'f/2.8' }],
    ['an aperture past it', { 'shots/frost/aperture': 'f/64' }],
    ['the narrowest', { 'shots/frost/aperture': 'f/32', 'shots/frost/iso': 'auto' }],
    ['no tilt', { 'shots/skin/tilt': '0 deg' }],
    ['a steep tilt', { 'shots/skin/tilt': '40 deg' }],
    ['a light behind the lens', { 'lights/panel/at': '{ distance: 900 mm, elevation: 5 deg }' }],
    ['a light to the side', { 'lights/panel/at': '{ distance: 300 mm, azimuth: 80 deg }' }],
    [
      'a rig overhead',
      {
        'rigs/bench/support': '{ foot: 62 mm, overhead: yes }',
        'shots/frost/light': '[panel, strip]',
      },
    ],
    ['no depth needed', { 'subjects/frost-plate/depth': '0 mm' }],
    ...(['1 to 2 um', '2000 to 2200 um', '30 um'] as const).map(
      (thickness) =>
        [
          `a crystal of ${thickness} between polarisers`,
          {
            'subjects/frost-plate/birefringence': '0.009',
            'subjects/frost-plate/thickness': thickness,
            'lights/panel/at': '{ distance: 100 mm, azimuth: 180 deg }',
            'lights/panel/polarised': 'crossed',
            'kit/filters': '{ pol: { kind: polariser, loss: 1.6 stops } }',
            'shots/frost/filters': '[pol]',
          },
        ] as const,
    ),
  ] as const)('with %s', (_, change) => {
    each(drawingsOf(coreWith(changed(EXAMPLE_PLAN, change))), expectClear);
  });
});

it('every curve and shaded area of a chart stands in its legend', () => {
  const charts = ofSamples.filter(({ id }) => id === 'aperture' || id === 'tilt-distance');
  expect(charts.length).toBeGreaterThan(20);
  for (const chart of charts) {
    const elements = all(chart);
    const looks = (of: readonly Element[]) =>
      new Set(of.map(({ attributes }) => String(attributes.class).split(' ')[0]!));
    const isSample = (one: Element): boolean =>
      (one.tag === 'line' && number(one, 'x2') - number(one, 'x1') === 22) ||
      (one.tag === 'rect' && number(one, 'width') === 22 && number(one, 'height') === 10);
    const named = looks(elements.filter(isSample));
    const drawn = looks(
      elements.filter(
        (one) =>
          !isSample(one) &&
          /^(curve|curve-ends|bound|holds|black)/.test(String(one.attributes.class)),
      ),
    );
    expect([...drawn].filter((look) => !named.has(look))).toEqual([]);
  }
});
