import { describe, expect, it } from 'vitest';
import {
  FACE_SHARES,
  GLASS_AS_PRINTED,
  ISO_OFFSET_STOPS,
  LIGHT_AS_GIVEN,
  LIGHT_METER,
  TEST_FRAME_STOPS,
} from '../../shared/assumptions/bench-beliefs.ts';
import { BENCH_ASSUMPTIONS } from '../../shared/assumptions/bench-table.ts';
import { BEND_ENDS, gapEnds, RULER } from '../../shared/assumptions/lens-beliefs.ts';
import type { ShotFigures } from '../../shared/figures/shot-figures.ts';
import { arrangeChain } from '../../shared/optics/arrangement.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import type { ChainPart } from '../../shared/optics/parts.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

/** Exposure of one shot, and its bounds. */
function exposureOf(change: Readonly<Record<string, string | null>>, shot = 'frost') {
  const uncertain = uncertainIn(changed(EXAMPLE_PLAN, change)).get(shot)!;
  const pick = ({ exposureErrorStops }: ShotFigures) => exposureErrorStops;
  const error = pick(uncertain.middle.figures);
  if (!error.known) throw new Error('not known');
  const { low, high, widenedBy } = uncertain.bounds(pick) ?? {
    low: error.value,
    high: error.value,
    widenedBy: [],
  };
  return {
    value: error.value,
    low,
    high,
    width: high - low,
    by: widenedBy.map(({ width }) => `${width.key} of ${width.of}`),
  };
}

const LIGHT = 'lights/panel/bench';
const BODY = 'kit/bodies/body-a/bench';
/** As written, and with no rows. */
const jsonOf = (text: string) => [...coreWith(text).figures(PLAN)];

describe('a bench of no rows', () => {
  it.each([LIGHT, BODY, 'kit/converters/twice/bench'])('%s changes nothing', (path) => {
    expect(jsonOf(changed(EXAMPLE_PLAN, { [path]: '[]' }))).toEqual(jsonOf(EXAMPLE_PLAN));
  });
});

/** The panel is read at f/8, 1/50 s, ISO 400: 2000 lx by C = 250 (E = C·N²/(t·S)). */
const LUX = (250 * 64 * 50) / 400;

describe('a bench of a light', () => {
  /** Of a face of 300 x 200 mm, straight in front: summed by `tests/published/light-bench.test.ts`. */
  const rows = (lux: readonly string[]) => `[${lux.map((one) => `{ ${one} }`).join(', ')}]`;

  it('takes the place of its reading, and not of one through the rig', () => {
    const bench = rows([`distance: 400 mm, illuminance: ${LUX / 4} lx`]);
    const [before, after] = [exposureOf({}), exposureOf({ [LIGHT]: bench })];
    // Facing the light it read 2 stops less; the subject lies 40° to it, by Lambert's cosine law.
    const less = after.value - before.value;
    expect(less).toBeLessThan(-2);
    expect(less).toBeGreaterThan(-2 + Math.log2(Math.cos((40 * Math.PI) / 180)) - 0.1);
    expect(after.by).toContain('bench of panel');
    const through = {
      'lights/panel/reading': '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: this-rig }',
    };
    expect(exposureOf({ ...through, [LIGHT]: bench }).value).toBe(exposureOf(through).value);
  });

  it('has bounds around its middle that narrow with every row', () => {
    const readings = [
      'distance: 400 mm, aperture: f/8, shutter: 1/50 s, iso: 400',
      'distance: 800 mm, aperture: f/4.3, shutter: 1/50 s, iso: 400',
      'distance: 600 mm, aperture: f/5.6, shutter: 1/50 s, iso: 400',
    ];
    const found = [1, 2, 3].map((count) => exposureOf({ [LIGHT]: rows(readings.slice(0, count)) }));
    each(found, ({ value, low, high }) => {
      expect(low).toBeLessThanOrEqual(value);
      expect(high).toBeGreaterThanOrEqual(value);
    });
    expect(found[1]!.width).toBeLessThan(found[0]!.width);
    expect(found[2]!.width).toBeLessThan(found[1]!.width);
  });

  it('narrows with ± of a row', () => {
    const of = (by: number) =>
      exposureOf({ [LIGHT]: rows([`distance: 400 ± ${by} mm, illuminance: 900 ± ${by * 8} lx`]) });
    expect(of(1).width).toBeLessThan(of(4).width);
    expect(of(4).width).toBeLessThan(of(10).width);
  });

  it('of exposures cancels the constant of the meter, of lux it does not', () => {
    const exposures = exposureOf({
      [LIGHT]: rows(['distance: 400 mm, aperture: f/8, shutter: 1/50 s, iso: 400']),
    });
    const lux = exposureOf({ [LIGHT]: rows([`distance: 400 mm, illuminance: ${LUX} lx`]) });
    expect(exposures.by).not.toContain('the meter constant C of null');
    expect(lux.by).toContain('the meter constant C of null');
    expect(lux.value).toBeCloseTo(exposures.value, 9);
  });

  it('of lux and exposures keeps to the exposures, whatever the constant', () => {
    const exposure = 'distance: 400 mm, aperture: f/8, shutter: 1/50 s, iso: 400';
    const alone = exposureOf({ [LIGHT]: rows([exposure]) });
    const mixed = exposureOf({
      [LIGHT]: rows([exposure, `distance: 400 mm, illuminance: ${LUX * 1.3} lx`]),
    });
    expect(Math.abs(mixed.value - alone.value)).toBeLessThan(0.06);
    expect(mixed.by).not.toContain('the meter constant C of null');
  });

  it('gives way to a brightness that the shot sets', () => {
    const relit = { 'shots/frost/relight': '{ panel: { illuminance: 500 lx } }' };
    const bench = rows([`distance: 400 mm, illuminance: ${LUX} lx`]);
    expect(exposureOf({ ...relit, [LIGHT]: bench }).value).toBe(exposureOf(relit).value);
  });
});

describe('a bench of a body', () => {
  const found = (words: string) => exposureOf({ [BODY]: `[{ set: 400, found: ${words} }]` });

  it('makes what was found under darker, and what was found over brighter', () => {
    const plain = exposureOf({});
    // One frame to 0.2 stops against a belief of 1 stop: 25/26 of it.
    expect(found('0.3 stops under').value - plain.value).toBeCloseTo((-0.3 * 25) / 26, 9);
    expect(found('0.3 stops over').value - plain.value).toBeCloseTo((0.3 * 25) / 26, 9);
    expect(found('0.3 stops under').by).toContain('bench of body-a');
    expect(found('0.3 ± 0.1 stops under').width).toBeLessThan(found('0.3 stops under').width);
  });

  it('is the mean of many frames, and surer for each', () => {
    const rows = Array.from(
      { length: 8 },
      (_, at) => `{ set: 400, found: 0.${at % 2 ? 4 : 2} stops under }`,
    );
    const many = exposureOf({ [BODY]: `[${rows.join(', ')}]` });
    expect(many.value - exposureOf({}).value).toBeCloseTo(-0.3, 2);
    expect(many.width).toBeLessThan(found('0.3 stops under').width);
  });

  it('cancels where the light was read through the body', () => {
    each(['this-rig', 'bare-lens'], (through) => {
      const read = {
        'lights/panel/reading': `{ aperture: f/8, shutter: 1/50 s, iso: 400, through: ${through} }`,
      };
      const bench = '[{ set: 400, found: 0.3 stops under }]';
      expect(exposureOf({ ...read, [BODY]: bench }).value).toBe(exposureOf(read).value);
    });
  });

  it('raises the ISO that a shot needs by as much', () => {
    const iso = (change: Readonly<Record<string, string>>) => {
      const { isoNeeded } = uncertainIn(changed(EXAMPLE_PLAN, change)).get('frost')!.middle.figures;
      return isoNeeded.known ? isoNeeded.value : Number.NaN;
    };
    const bench = '[{ set: 400, found: 0.5 ± 0.01 stops under }]';
    expect(Math.log2(iso({ [BODY]: bench }) / iso({}))).toBeCloseTo(0.5, 2);
  });
});

describe('a bench of a converter', () => {
  /** The factor is the ratio of the fields in the chain itself, with the ring left alone. */
  it('measures what the chain calls its factor', () => {
    const body: ChainPart = { kind: 'body', flangeMm: 20 };
    const lens: ChainPart = {
      kind: 'lens',
      focalMm: 200,
      closest: { fromSensorMm: 850, magnification: 0.3 },
    };
    const m = (parts: readonly ChainPart[]) => {
      const arranged = arrangeChain(parts);
      if (!arranged.ok) throw new Error('no chain');
      return traceChain(arranged.chain, 0.3).magnification!;
    };
    const twice: ChainPart = { kind: 'converter', factor: 1.96, lengthMm: 53 };
    expect(m([body, twice, lens]) / m([body, lens])).toBeCloseTo(1.96, 9);
  });

  it('corrects its factor and its loss, in every figure that follows', () => {
    const rows = (fields: string) => ({
      'kit/converters/twice/bench': `[{ field: 38 mm, field-without: 74.5 mm }${fields}]`,
    });
    const figures = (change: Readonly<Record<string, string>>) =>
      uncertainIn(changed(EXAMPLE_PLAN, change)).get('skin')!;
    const effective = ({ effectiveFNumber }: ShotFigures) => effectiveFNumber;
    const value = (change: Readonly<Record<string, string>>) => {
      const figure = effective(figures(change).middle.figures);
      return figure.known ? figure.value : Number.NaN;
    };
    expect(value(rows(''))).not.toBe(value({}));
    expect(
      figures(rows(''))
        .bounds(effective)!
        .widenedBy.map(({ width }) => width.of),
    ).toContain('twice');
    const light = (change: Readonly<Record<string, string>>) => {
      const { glassLossStops } = figures(change).middle.figures;
      return glassLossStops.known ? glassLossStops.value : Number.NaN;
    };
    const lost = rows(', { light-lost: 2.4 ± 0.02 stops }');
    expect(light(lost) - light({})).toBeGreaterThan(0.2);
  });
});

describe('a bench of a close-up lens', () => {
  /** A lens at infinity sees what is at the focal length of the close-up: 1000/P mm. */
  it('corrects its power by where it is in focus', () => {
    const plan = (more: string) =>
      changed(EXAMPLE_PLAN, {
        'kit/close-up-lenses': `{ plus: { power: 2 dpt${more} } }`,
        'rigs/plain/parts': '[body-a, short-50, plus]',
        'shots/frost/rig': 'plain',
        'shots/frost/field': null,
        'shots/frost/ring': 'infinity',
      });
    const distance = (more: string) => {
      const { workingDistanceMm } = uncertainIn(plan(more)).get('frost')!.middle.figures;
      return workingDistanceMm.known ? workingDistanceMm.value : Number.NaN;
    };
    expect(distance('')).toBeCloseTo(500, 6);
    const measured = distance(', bench: [{ working-distance: 480 mm }]');
    // 2 mm against 10 % of the power.
    expect(measured).toBeCloseTo(480, 0);
  });
});

describe('rows that contradict each other', () => {
  const found = (path: string, rows: string) =>
    findingsOf(changed(EXAMPLE_PLAN, { [path]: rows }))
      .filter(({ rule }) => rule.startsWith('bench-'))
      .map(({ rule, what }) => `${rule}: ${what}`);

  it('are found on the value', () => {
    expect(
      found(
        BODY,
        '[{ set: 400, found: 0.3 stops under }, { set: 800, found: 0.9 stops over }, { set: 1600, found: 0.3 stops under }]',
      ),
    ).toEqual(['bench-differs: `found` of row 2 is 1.2 stops from what the others say.']);
    expect(
      found(
        LIGHT,
        '[{ distance: 500 mm, illuminance: 3500 lx }, { distance: 1 m, illuminance: 1850 lx }, { distance: 2 m, illuminance: 235 lx }]',
      ),
    ).toEqual(['bench-differs: `illuminance` of row 2 is 1 stop from what the others say.']);
  });

  it('are not blamed where they agree', () => {
    expect(
      found(BODY, '[{ set: 400, found: 0.3 stops under }, { set: 800, found: 0.2 stops under }]'),
    ).toEqual([]);
  });
});

describe('the table of assumptions', () => {
  it('has the numbers that benches are fitted with', () => {
    const ends = (id: keyof typeof BENCH_ASSUMPTIONS) => BENCH_ASSUMPTIONS[id].value.ends;
    const percent = (share: number) => `${100 * share}%`;
    expect(ends('bench-meter')).toContain(`± ${LIGHT_METER.stops} stops`);
    expect(ends('bench-meter')).toContain(`± ${LIGHT_METER.distanceMm} mm`);
    expect(ends('bench-meter')).toContain(percent(LIGHT_METER.distanceShare));
    expect(ends('bench-light-output')).toBe(`± ${LIGHT_AS_GIVEN.outputStops} stops`);
    expect(ends('bench-light-face')).toContain(`± ${percent(LIGHT_AS_GIVEN.faceShare)}`);
    expect(ends('bench-light-face')).toContain(
      `${percent(FACE_SHARES.low)} to ${percent(FACE_SHARES.high)}`,
    );
    expect(ends('bench-iso')).toContain(`± ${ISO_OFFSET_STOPS} stop`);
    expect(ends('bench-iso')).toContain(`± ${TEST_FRAME_STOPS} stops`);
    expect(ends('bench-glass')).toContain(`factor ± ${percent(GLASS_AS_PRINTED.factor)}`);
    expect(ends('bench-glass')).toContain(`power ± ${percent(GLASS_AS_PRINTED.power)}`);
    expect(ends('bench-ruler')).toContain(`${percent(RULER.fieldShare)} or ${RULER.fieldMm} mm`);
    expect(ends('bench-ruler')).toContain(`± ${RULER.distanceMm} mm`);
    expect(ends('bench-ruler')).toContain(`± ${RULER.lightStops} stops`);
    const [from, to] = [BEND_ENDS.low, BEND_ENDS.high].map((bend) => percent(0.5 + bend));
    expect(ends('bench-bend')).toContain(`${from} to ${to}`);
    const gap = gapEnds(1);
    expect(ends('bench-principal-planes')).toContain(
      `−${percent(-gap.low)} to ${percent(gap.high)}`,
    );
  });
});
