/** Drawings are to scale: what is measured in them is what `figures` says. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { documentOf, drawing, pageOf, sampleCore, samples } from './support/sheets.ts';

/** Drawings round to hundredths of a unit. */
const ROUNDED = 0.02;

const text = (name: string): string => samples.find(([file]) => file.startsWith(name))![1];

function look(plan: string) {
  const core = sampleCore(plan);
  return { page: documentOf(pageOf(core)), figures: core.figures(PLAN) };
}

type Numbers = Record<string, number>;

describe('the frame', () => {
  it('of every shot is as large as its field', () => {
    each(
      samples.filter(([name]) => /tide|slick|watch|lantern/.test(name)),
      ([_, plan]) => {
        const { page, figures } = look(plan);
        expect(figures.size).toBeGreaterThan(1);
        for (const [shot, { fieldMm }] of figures) {
          const frame = drawing(page, shot, 'Frame');
          const [width, height] = fieldMm as [number, number];
          const near = ROUNDED * frame.mmPerUnit;
          expect(Math.abs(frame.mm('[data-frame]', 'width') - width)).toBeLessThan(near);
          expect(Math.abs(frame.mm('[data-frame]', 'height') - height)).toBeLessThan(near);
        }
      },
    );
  });

  // A thin lens: the far limit of sharpness is never nearer to the plane of focus than the near one.
  it.each(['tide', 'watch'])('of %s is said to be sharp farther behind than in front', (name) => {
    const said = [
      ...pageOf(sampleCore(text(name))).matchAll(
        /([\d.]+) mm in front of the plane of focus, ([\d.]+) mm behind/g,
      ),
    ];
    expect(said.length).toBeGreaterThan(2);
    for (const [, ahead, beyond] of said) expect(Number(ahead)).toBeLessThanOrEqual(Number(beyond));
  });

  it('shows a subject that is smaller than it in its size: a balance wheel of 15 mm', () => {
    const { page } = look(text('watch'));
    const frame = drawing(page, 'balance-wheel', 'Frame');
    const d = frame.all('[data-subject]')[0]!.getAttribute('d')!;
    const xs = [...d.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
    const diameter = (Math.max(...xs) - Math.min(...xs)) * frame.mmPerUnit;
    expect(diameter).toBeGreaterThan(14.9);
    expect(diameter).toBeLessThan(15.1);
  });

  it('crosses the black part in its share and on its side', () => {
    // The strip is swung away from where the film looks.
    const plan = changed(EXAMPLE_PLAN, {
      'lights/strip/at': '{ distance: 300 mm, elevation: 26 deg }',
    });
    const core = coreWith(plan);
    const { blackShare, blackSide } = core.figures(PLAN).get('skin') as unknown as {
      blackShare: number;
      blackSide: string;
    };
    expect(blackShare).toBeGreaterThan(0.05);
    const frame = drawing(documentOf(pageOf(core)), 'skin', 'Frame');
    const black = frame.at('[data-black]', 'width') * frame.at('[data-black]', 'height');
    const whole = frame.at('[data-frame]', 'width') * frame.at('[data-frame]', 'height');
    expect(black / whole).toBeCloseTo(blackShare, 3);
    expect(frame.all('[data-black]')[0]!.getAttribute('data-black')).toBe(blackSide);
  });
});

describe('depth', () => {
  it('there and needed of every shot', () => {
    each(
      samples.filter(([name]) => /tide|slick|watch|lantern/.test(name)),
      ([_, plan]) => {
        const { page, figures } = look(plan);
        for (const [shot, { usableDepthMm, depthMm }] of figures) {
          const depth = drawing(page, shot, 'Depth of field: available and needed');
          const near = ROUNDED * depth.mmPerUnit;
          const there = depth.mm('[data-depth=there]', 'width');
          expect(Math.abs(there - (usableDepthMm as number))).toBeLessThan(near);
          const { needed } = depthMm as Numbers;
          // One frame of a stack needs none of it.
          if (needed === 0) {
            expect(depth.all('[data-depth=needed]')).toEqual([]);
            continue;
          }
          const drawn = depth.mm('[data-depth=needed]', 'width');
          expect(Math.abs(drawn - needed!)).toBeLessThan(near);
        }
      },
    );
  });
});

describe('the rig', () => {
  it('has parts of their length, the foot and the centre of gravity in their places', () => {
    const { page, figures } = look(text('tide'));
    const { footMm, centreOfGravityMm } = figures.get('bands-falling') as unknown as Numbers;
    const rig = drawing(page, 'bands-falling', 'Rig from the side');
    // Lengths as the kit has them: flange 44 mm, tubes by their names, lens 165 mm.
    const lengths = { 'body-a': 44, 'tube-36': 36, 'tube-20': 20, 'tube-12': 12, 'long-200': 165 };
    for (const [part, length] of Object.entries(lengths))
      expect(rig.mm(`[data-part=${part}]`, 'width'), part).toBeCloseTo(length, 1);
    const sensor = rig.at('[data-part=body-a]', 'x');
    const foot = rig.points('[data-mark=foot]')[0]![0];
    expect((foot - sensor) * rig.mmPerUnit).toBeCloseTo(footMm!, 1);
    const centre = rig.at('[data-mark=centre-of-gravity]', 'cx');
    expect((centre - sensor) * rig.mmPerUnit).toBeCloseTo(centreOfGravityMm!, 1);
    // The rim is 82 mm across.
    expect(rig.mm('[data-part=long-200]', 'height')).toBeCloseTo(82, 1);
  });
});

describe('subject, lens and light', () => {
  const { page, figures } = look(text('tide'));
  const scene = drawing(page, 'bands-falling', 'Subject, lens and light from the side');
  const subject = scene.points('[data-subject]');
  const middle = (at: 0 | 1): number =>
    subject.reduce((sum, point) => sum + point[at], 0) / subject.length;

  it('the rim stands at the working distance', () => {
    const rim = scene.at('[data-part=lens]', 'x') + scene.at('[data-part=lens]', 'width');
    const { workingDistanceMm } = figures.get('bands-falling') as unknown as Numbers;
    expect((middle(0) - rim) * scene.mmPerUnit).toBeCloseTo(workingDistanceMm!, 0);
  });

  it('the subject leans back by its tilt, 6°, its top away from the lens', () => {
    const [bottom, top] = subject as [[number, number], [number, number]];
    const lean = Math.atan2(top[0] - bottom[0], bottom[1] - top[1]);
    expect((lean * 180) / Math.PI).toBeCloseTo(6, 0);
    expect(top[0]).toBeGreaterThan(bottom[0]);
  });

  it('the light stands where the plan has it: 450 mm away, 17° up, 200 mm high', () => {
    const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((name) => scene.at('[data-lamp]', name));
    const [x, y] = [(x1! + x2!) / 2, (y1! + y2!) / 2];
    const [toward, up] = [middle(0) - x, middle(1) - y];
    expect(Math.hypot(toward, up) * scene.mmPerUnit).toBeCloseTo(450, 0);
    expect((Math.atan2(up, toward) * 180) / Math.PI).toBeCloseTo(17, 0);
    expect(Math.hypot(x1! - x2!, y1! - y2!) * scene.mmPerUnit).toBeCloseTo(200, 0);
  });

  it('rays are thrown back at equal angles with the subject (law of reflection)', () => {
    const [bottom, top] = subject as [[number, number], [number, number]];
    // On the drawing the lens looks along +x; the normal of the subject points back toward it.
    const along = [top[0] - bottom[0], top[1] - bottom[1]] as const;
    const rays = scene.all('.ray');
    const thrown = scene.all('[data-ray=thrown]');
    expect(thrown).toHaveLength(2);
    const angle = (line: Element, from: 1 | 2): number => {
      const to = from === 1 ? 2 : 1;
      const v = ['x', 'y'].map(
        (axis) =>
          Number(line.getAttribute(`${axis}${to}`)) - Number(line.getAttribute(`${axis}${from}`)),
      ) as [number, number];
      return Math.acos(
        (v[0] * along[0] + v[1] * along[1]) / (Math.hypot(...v) * Math.hypot(...along)),
      );
    };
    for (const [index, ray] of rays.entries())
      expect(angle(ray, 2) + angle(thrown[index]!, 1)).toBeCloseTo(Math.PI, 2);
  });
});

describe('the set from above, and a rig overhead', () => {
  const middleOf = (points: readonly (readonly [number, number])[]) =>
    ([0, 1] as const).map(
      (axis) => points.reduce((sum, point) => sum + point[axis], 0) / points.length,
    ) as [number, number];

  it('from above a light stands where its azimuth has it: 550 mm away, 50° up, 20° to the left', () => {
    const { page } = look(text('lantern'));
    const shot = [...page.querySelectorAll('.shot h2')][0]!.textContent!;
    const above = drawing(page, shot, 'Subject, lens and light from above');
    const [x, y] = middleOf(above.points('[data-lamp]'));
    const [, z0, axisY] = ['x1', 'x2', 'y1'].map((name) => above.at('line.axis', name));
    const [toward, left] = [(z0! - x) * above.mmPerUnit, (axisY! - y) * above.mmPerUnit];
    // Who looks to the right of the page has left above. By the definition of
    // both angles the plan view is foreshortened by the elevation.
    const level = 550 * Math.cos((50 * Math.PI) / 180);
    expect(Math.hypot(toward, left)).toBeCloseTo(level, 0);
    expect((Math.atan2(left, toward) * 180) / Math.PI).toBeCloseTo(20, 0);
  });

  it('a subject turned to the right throws the rays to the right', () => {
    const turned = changed(EXAMPLE_PLAN, {
      'shots/skin/tilt-axis': 'upright',
      'shots/skin/tilt': '8 deg',
    });
    const above = drawing(
      documentOf(pageOf(coreWith(turned))),
      'skin',
      'Subject, lens and light from above',
    );
    const [from, to] = above.points('[data-subject]') as [[number, number], [number, number]];
    const lean = Math.atan2(from[0] - to[0], Math.abs(from[1] - to[1]));
    expect((Math.abs(lean) * 180) / Math.PI).toBeCloseTo(8, 0);
    // To the camera's right is down on the page.
    const thrown = above.all('[data-ray=thrown]');
    expect(thrown).toHaveLength(2);
    const slope = thrown.map(
      (ray) => Number(ray.getAttribute('y2')) - Number(ray.getAttribute('y1')),
    );
    expect(slope[0]! + slope[1]!).toBeGreaterThan(0);
  });

  const { page, figures } = look(text('slick'));
  const side = drawing(page, 'edge-creeps', 'Subject, lens and light from the side');
  const lens = middleOf(side.points('[data-part=lens]'));
  const water = side.points('[data-subject]');

  it('hangs over its subject, leaning by the tilt where the water lies level', () => {
    for (const [, y] of water) expect(y).toBeCloseTo(water[0]![1], 1);
    const [x, y] = middleOf(water);
    expect(lens[1]).toBeLessThan(y);
    expect((Math.atan2(x - lens[0], y - lens[1]) * 180) / Math.PI).toBeCloseTo(16, 0);
  });

  it('at its working distance', () => {
    const { workingDistanceMm } = figures.get('edge-creeps') as unknown as Numbers;
    const [x, y] = middleOf(water);
    const rim = side.points('[data-part=lens]').map(([px, py]) => Math.hypot(px - x, py - y));
    const nearest = [...rim].sort((a, b) => a - b).slice(0, 2);
    // Both ends of the front, 72 mm across, are equally far from the middle of the subject.
    const [a, b] = nearest.map((units) => units * side.mmPerUnit) as [number, number];
    expect(a).toBeCloseTo(b, 0);
    expect(Math.sqrt(a * a - 36 * 36)).toBeCloseTo(workingDistanceMm!, 0);
  });

  it('shows the front of the lens and the frame from above in their sizes', () => {
    const above = drawing(page, 'edge-creeps', 'Subject, lens and light from above');
    expect(above.mm('[data-part=lens]', 'r')).toBeCloseTo(36, 0);
    expect(above.mm('[data-frame]', 'width')).toBeCloseTo(40, 0);
    // Up in the frame is up on the page: the light stands over its top edge.
    expect(middleOf(above.points('[data-lamp]'))[1]).toBeLessThan(above.at('[data-frame]', 'y'));
  });
});

describe('windows', () => {
  const { page, figures } = look(text('tide'));

  it('the tilt window has its ends on its own scale', () => {
    const tilt = drawing(page, 'first-black', 'Tilt window');
    const ticks = tilt.all('.grid').map((tick) => Number(tick.getAttribute('x1')));
    const labels = tilt
      .all('text')
      .map(({ textContent }) => /^([\d.]+)°$/.exec(textContent ?? ''))
      .flatMap((match) => (match ? [Number(match[1])] : []));
    const perDegree = (ticks.at(-1)! - ticks[0]!) / (labels.at(-1)! - labels[0]!);
    const [least, greatest] = figures.get('first-black')!.tiltWindowDeg as [number, number];
    const start = (tilt.at('[data-window=tilt]', 'x') - ticks[0]!) / perDegree;
    expect(start).toBeCloseTo(least, 1);
    expect(tilt.at('[data-window=tilt]', 'width') / perDegree).toBeCloseTo(greatest - least, 1);
  });

  it('a film that lasts 90 s is gone at one and a half times a minute’s take', () => {
    const life = drawing(page, 'bands-falling', 'Film lifetime');
    const [settle, take] = ['settle', 'take'].map((span) =>
      life.at(`[data-span=${span}]`, 'width'),
    );
    const gone = life.at('[data-mark=gone]', 'x1') - life.at('[data-span=settle]', 'x');
    expect(settle! / take!).toBeCloseTo(6 / 60, 2);
    expect(gone / take!).toBeCloseTo(90 / 60, 2);
  });
});

it('every bar of scale is as long as it says', () => {
  let seen = 0;
  for (const [, plan] of samples) {
    const { page } = look(plan);
    for (const bar of page.querySelectorAll('[data-scale-bar-mm]')) {
      const mmPerUnit = Number(bar.closest('svg')!.getAttribute('data-mm-per-unit'));
      const length = Number(bar.getAttribute('x2')) - Number(bar.getAttribute('x1'));
      const said = Number(bar.getAttribute('data-scale-bar-mm'));
      expect(Math.abs(length - said / mmPerUnit)).toBeLessThan(ROUNDED);
      expect(bar.closest('svg')!.textContent).toMatch(
        new RegExp(
          `(^|\\D)${said >= 1000 ? `${said / 1000} m` : `${Number(said.toPrecision(3))} mm`}`,
        ),
      );
      seen++;
    }
  }
  expect(seen).toBeGreaterThan(30);
});

it('light lost is drawn in proportion to its stops', () => {
  const { page, figures } = look(text('tide'));
  const light = drawing(page, 'first-black', 'Light loss');
  const losses = figures.get('first-black')!.lossByPart as unknown as {
    part: string;
    stops: number;
  }[];
  const widths = losses.map(({ part }) => light.at(`[data-loss=${part}]`, 'width'));
  for (const [index, { stops }] of losses.entries())
    expect(widths[index]! / widths[0]!).toBeCloseTo(stops / losses[0]!.stops, 2);
});

it('the curve of contrast runs through what `figures` says at the aperture set', () => {
  const { page, figures } = look(text('tide'));
  for (const shot of ['bands-falling', 'first-black']) {
    const contrast = drawing(page, shot, 'Choice of aperture');
    const x = contrast.at('[data-panel=contrast] [data-mark=aperture]', 'x1');
    const grid = contrast
      .all('[data-panel=contrast] line.grid')
      .map((one) => Number(one.getAttribute('y1')));
    const [zero, whole] = [Math.max(...grid), Math.min(...grid)];
    const points = contrast.points('[data-curve=middle]');
    const after = points.findIndex(([px]) => px >= x);
    const [[xa, ya], [xb, yb]] = [points[after - 1]!, points[after]!];
    const y = ya + ((yb - ya) * (x - xa)) / (xb - xa);
    expect((zero - y) / (zero - whole)).toBeCloseTo(figures.get(shot)!.contrast as number, 2);
  }
});
