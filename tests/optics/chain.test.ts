import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangeChain } from '../../shared/optics/arrangement.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import { subjectToSensorMm } from '../../shared/optics/focal-length.ts';
import { lossByPart } from '../../shared/optics/light-loss.ts';
import { type ChainPart, impossibleInput, type LensPart } from '../../shared/optics/parts.ts';
import { reach, ringFor, ringForDistance } from '../../shared/optics/reach.ts';
import { chainOf } from '../published/support/chains.ts';
import { each } from '../support/each.ts';

const body: ChainPart = { kind: 'body', flangeMm: 44 };
const twice: ChainPart = { kind: 'converter', factor: 2, lengthMm: 53 };
const tube = (lengthMm: number): ChainPart => ({ kind: 'tube', lengthMm });
const tubes = [tube(36), tube(20), tube(12)];
const long: LensPart = {
  kind: 'lens',
  focalMm: 200,
  closest: { fromSensorMm: 850, magnification: 0.3 },
  lengthMm: 165,
  pupilRatio: 0.8,
};

describe('order of converter and tubes, lens at infinity', () => {
  // Closed forms: M·E/f with the tubes ahead of the converter, E/(M·f) behind it.
  it('f 200, E 68, M 2: 0.680 ahead, 0.170 behind', () => {
    expect(traceChain(chainOf(body, twice, ...tubes, long), 0).magnification).toBeCloseTo(0.68, 12);
    expect(traceChain(chainOf(body, ...tubes, twice, long), 0).magnification).toBeCloseTo(0.17, 12);
  });

  it('holds for any factor, extension and focal length', () => {
    const f = fc.double({ min: 20, max: 600, noNaN: true });
    const e = fc.double({ min: 5, max: 300, noNaN: true });
    const factor = fc.double({ min: 1.1, max: 3, noNaN: true });
    const length = fc.double({ min: 10, max: 80, noNaN: true });
    fc.assert(
      fc.property(f, e, factor, length, (focalMm, extension, M, lengthMm) => {
        const lens: ChainPart = { kind: 'lens', focalMm };
        const converter: ChainPart = { kind: 'converter', factor: M, lengthMm };
        const ahead = traceChain(chainOf(body, converter, tube(extension), lens), 0);
        const behind = traceChain(chainOf(body, tube(extension), converter, lens), 0);
        expect(ahead.magnification! / ((M * extension) / focalMm)).toBeCloseTo(1, 9);
        expect(behind.magnification! / (extension / (M * focalMm))).toBeCloseTo(1, 9);
        const actual = M + (extension * (M - 1) ** 2) / (lengthMm * M);
        expect(behind.converterMagnification / actual).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('a gap between the principal planes', () => {
  const chain = (lens: LensPart) => chainOf(body, twice, ...tubes, lens);

  it('of 0 changes no figure by a bit', () => {
    for (const ring of [0, 0.1, 0.3])
      expect(traceChain(chain({ ...long, gapMm: 0 }), ring)).toStrictEqual(
        traceChain(chain(long), ring),
      );
  });

  it('moves the subject away by as much where the focal length stays', () => {
    const closest = { fromSensorMm: 850 + 15, magnification: 0.3 };
    const apart = traceChain(chain({ ...long, closest, gapMm: 15 }), 0.2);
    const together = traceChain(chain(long), 0.2);
    expect(apart.magnification).toBeCloseTo(together.magnification!, 12);
    expect(apart.subjectToSensorMm! - together.subjectToSensorMm!).toBeCloseTo(15, 9);
    expect(apart.workingDistanceMm! - together.workingDistanceMm!).toBeCloseTo(15, 9);
  });

  it('that grows up close keeps both ends of the ring where they are', () => {
    const lens = { ...long, gapMm: 5, gapGrowsMm: 12 };
    const closest = traceChain(chainOf(body, lens), 0.3);
    expect(closest.subjectToSensorMm).toBeCloseTo(850, 9);
    expect(closest.magnification).toBeCloseTo(0.3, 12);
    const atInfinity = traceChain(chain(lens), 0);
    expect(atInfinity).toStrictEqual(traceChain(chain({ ...long, gapMm: 5 }), 0));
  });

  it("lies between the subject and the sensor, so the lens can't focus nearer than that", () => {
    const lens = (fromSensorMm: number, gapGrowsMm: number): LensPart => ({
      ...long,
      closest: { fromSensorMm, magnification: 0.3 },
      gapMm: 50,
      gapGrowsMm,
    });
    expect(impossibleInput(lens(69, 20))).toBe('closest.fromSensorMm');
    expect(impossibleInput(lens(71, 20))).toBeUndefined();
    expect(impossibleInput(lens(31, -20))).toBeUndefined();
    expect(impossibleInput(lens(29, -20))).toBe('closest.fromSensorMm');
  });

  it('is part of the distance that the ring shows', () => {
    const lens = { ...long, gapMm: 20 };
    expect(ringForDistance(lens, 850).ringMagnification).toBeCloseTo(0.3, 9);
    const at = ringForDistance(lens, 1500).ringMagnification;
    const alone = traceChain(chainOf(body, lens), at);
    expect(alone.subjectToSensorMm).toBeCloseTo(1500, 6);
  });
});

describe('a rig at 1.5x', () => {
  const chain = chainOf(body, twice, ...tubes, long);
  const { ringMagnification, beyond } = ringFor(chain, 1.5)!;
  const trace = traceChain(chain, ringMagnification);

  it('solves the ring and the focal length together', () => {
    expect(beyond).toBeUndefined();
    expect(trace.magnification).toBeCloseTo(1.5, 12);
    expect(trace.lensMagnification).toBeCloseTo(ringMagnification + 68 / trace.focalMm, 12);
    expect(trace.converterMagnification).toBeCloseTo(2, 12);
  });

  it('f/16 works as f/62, and the loss is 2·log2 of their ratio', () => {
    expect(16 * trace.fNumberRatio).toBeCloseTo(62, 8);
    expect(trace.lightLossStops).toBeCloseTo(2 * Math.log2(62 / 16), 8);
  });

  it('working distance by its closed form, f(2 + m0 + 1/m1) − F − length', () => {
    const { focalMm, lensMagnification: m1 } = trace;
    const closedForm = focalMm * (2 + ringMagnification + 1 / m1) - 44 - 165;
    expect(trace.workingDistanceMm).toBeCloseTo(closedForm, 9);
    expect(trace.pupilDistanceMm).toBeCloseTo(focalMm * (1 / m1 + 1 / 0.8), 9);
    expect(trace.pupilDistanceMm! - trace.workingDistanceMm!).toBeCloseTo(trace.pupilDepthMm!, 9);
    expect(trace.subjectToSensorMm! - trace.workingDistanceMm!).toBeCloseTo(
      trace.rimFromSensorMm!,
      9,
    );
  });

  it('charges every part with its light: the sum is the whole, the converter costs its two stops', () => {
    const losses = lossByPart(chain, ringMagnification);
    const sum = losses.reduce((total, { stops }) => total + stops, 0);
    expect(sum).toBeCloseTo(trace.lightLossStops, 12);
    expect(losses[0]?.stops).toBe(0);
    expect(losses[1]?.stops).toBeCloseTo(2, 12);
    expect(losses.at(-1)?.stops).toBeCloseTo(2 * Math.log2(1 + ringMagnification / 0.8), 12);
  });
});

describe('the lens alone at its closest', () => {
  it('stands where it is printed, less flange and length', () => {
    const trace = traceChain(chainOf(body, long), 0.3);
    expect(trace.subjectToSensorMm).toBeCloseTo(850, 9);
    expect(trace.workingDistanceMm).toBeCloseTo(850 - 44 - 165, 9);
  });

  it('a barrel that grows takes its growth from the working distance', () => {
    const grown = traceChain(chainOf(body, { ...long, growsMm: 20 }), 0.3);
    expect(grown.workingDistanceMm).toBeCloseTo(850 - 44 - 165 - 20, 9);
    const half = traceChain(chainOf(body, { ...long, growsMm: 20 }), 0.15);
    const plain = traceChain(chainOf(body, long), 0.15);
    expect(plain.workingDistanceMm! - half.workingDistanceMm!).toBeCloseTo(10, 9);
  });
});

describe('at infinity', () => {
  it.each([
    ['lens', [body, long]],
    ['converter and lens', [body, twice, long]],
    ['two converters', [body, twice, { kind: 'converter', factor: 1.4, lengthMm: 21 }, long]],
  ] as [string, ChainPart[]][])('%s: no magnification, no loss by extension', (_, parts) => {
    const trace = traceChain(chainOf(...parts), 0);
    expect(trace.magnification).toBe(0);
    expect(trace.focus).toBe('infinity');
    expect(trace.workingDistanceMm).toBe(Number.POSITIVE_INFINITY);
    expect(trace.fNumberRatio).toBeCloseTo(trace.converterMagnification, 12);
    expect(trace.pupilDepthMm).toBeGreaterThan(0);
  });
});

describe('close-up lenses', () => {
  const plusTwo: ChainPart = { kind: 'close-up', powerDpt: 2 };

  it('on a lens at infinity: m = f·P/1000, no light, the subject at 1/P from the rim', () => {
    const trace = traceChain(chainOf(body, long, plusTwo), 0);
    expect(trace.magnification).toBeCloseTo(0.4, 12);
    expect(trace.fNumberRatio).toBe(1);
    expect(trace.workingDistanceMm).toBeCloseTo(500, 9);
  });

  it('two of them add', () => {
    const together = traceChain(chainOf(body, long, plusTwo, plusTwo), 0.2);
    const one = traceChain(chainOf(body, long, { kind: 'close-up', powerDpt: 4 }), 0.2);
    expect(together).toEqual({ ...one });
  });

  it('cost nothing off infinity either', () => {
    const chain = chainOf(body, ...tubes, long, plusTwo);
    expect(traceChain(chain, 0.2).fNumberRatio).toBeCloseTo(
      traceChain(chainOf(body, ...tubes, long), 0.2).fNumberRatio,
      12,
    );
    expect(lossByPart(chain, 0.2).at(-1)).toEqual({ part: 5, stops: 0 });
  });

  it('far ahead of a short lens in macro: nothing real is in focus, and it says so', () => {
    const short: LensPart = { kind: 'lens', focalMm: 20, lengthMm: 150 };
    const trace = traceChain(chainOf(body, tube(10), short, { kind: 'close-up', powerDpt: 10 }), 0);
    expect(trace.focus).toBe('nowhere');
    expect(trace.magnification).toBeUndefined();
    expect(trace.missing.magnification).toBeUndefined();
  });
});

describe('what is not known', () => {
  it('a lens length leaves only the rim open', () => {
    const trace = traceChain(chainOf(body, twice, ...tubes, { ...long, lengthMm: undefined }), 0.2);
    const whole = traceChain(chainOf(body, twice, ...tubes, long), 0.2);
    expect(trace.workingDistanceMm).toBeUndefined();
    expect(trace.missing.workingDistanceMm).toEqual([{ part: 5, input: 'lengthMm' }]);
    expect(trace.pupilDistanceMm).toBe(whole.pupilDistanceMm);
    expect(trace.subjectToSensorMm).toBe(whole.subjectToSensorMm);
  });

  it('a converter length leaves only the distance to the sensor open, without tubes behind it', () => {
    const { kind, factor } = { kind: 'converter', factor: 2 } as const;
    const trace = traceChain(chainOf(body, { kind, factor }, ...tubes, long), 0.2);
    const whole = traceChain(chainOf(body, twice, ...tubes, long), 0.2);
    expect(trace.magnification).toBeCloseTo(whole.magnification!, 12);
    expect(trace.workingDistanceMm).toBeCloseTo(whole.workingDistanceMm!, 9);
    expect(trace.subjectToSensorMm).toBeUndefined();
    expect(trace.missing.subjectToSensorMm).toEqual([{ part: 1, input: 'lengthMm' }]);
    expect(arrangeChain([body, tube(12), { kind, factor }, long])).toEqual({
      ok: false,
      fault: { kind: 'needs', part: 2, input: 'lengthMm' },
    });
  });

  it('a close-up off infinity needs the rim, at infinity it does not', () => {
    const chain = chainOf({ kind: 'body' }, long, { kind: 'close-up', powerDpt: 2 });
    expect(traceChain(chain, 0).magnification).toBeCloseTo(0.4, 12);
    expect(traceChain(chain, 0.2).magnification).toBeUndefined();
    expect(traceChain(chain, 0.2).missing.magnification).toEqual([{ part: 0, input: 'flangeMm' }]);
  });

  it('a pupil ratio is taken as 1, and said so', () => {
    const trace = traceChain(chainOf(body, { ...long, pupilRatio: undefined }), 0.3);
    expect(trace.pupilRatioAssumed).toBe(true);
    expect(trace.fNumberRatio).toBeCloseTo(1.3, 12);
  });
});

describe('parts that make no chain', () => {
  it('each is refused, with its fault', () => {
    each(
      [
        ['no body', [long], { kind: 'no-body' }],
        ['no lens', [body, twice], { kind: 'no-lens' }],
        ['nothing', [], { kind: 'no-body' }],
        ['a tube behind the body', [tube(12), body, long], { kind: 'out-of-place', part: 0 }],
        ['a tube ahead of the lens', [body, long, tube(12)], { kind: 'out-of-place', part: 2 }],
        ['two bodies', [body, body, long], { kind: 'out-of-place', part: 1 }],
        ['two lenses', [body, long, long], { kind: 'out-of-place', part: 2 }],
        [
          'a close-up behind the lens',
          [body, { kind: 'close-up', powerDpt: 2 }, long],
          { kind: 'out-of-place', part: 1 },
        ],
        [
          'a converter that reduces',
          [body, { kind: 'converter', factor: 0.7, lengthMm: 20 }, long],
          { kind: 'impossible', part: 1, input: 'factor' },
        ],
        [
          'a negative tube',
          [body, tube(-3), long],
          { kind: 'impossible', part: 1, input: 'lengthMm' },
        ],
        [
          'a focal length of none',
          [body, { ...long, focalMm: 0 }],
          { kind: 'impossible', part: 1, input: 'focalMm' },
        ],
        [
          'an endless closest distance',
          [
            body,
            { ...long, closest: { fromSensorMm: Number.POSITIVE_INFINITY, magnification: 1 } },
          ],
          { kind: 'impossible', part: 1, input: 'closest.fromSensorMm' },
        ],
      ] as [string, ChainPart[], object][],
      ([_, parts, fault]) => {
        expect(arrangeChain(parts)).toEqual({ ok: false, fault });
      },
    );
  });
});

describe('reach and ring', () => {
  it('runs from infinity to the closest setting', () => {
    const chain = chainOf(body, twice, ...tubes, long);
    const [least, most] = reach(chain)!;
    expect(least).toBeCloseTo(0.68, 12);
    expect(most).toBeCloseTo(traceChain(chain, 0.3).magnification!, 12);
  });

  it('a lens without closest has one magnification and one setting', () => {
    const chain = chainOf(body, tube(50), { kind: 'lens', focalMm: 100 });
    expect(reach(chain)).toEqual([0.5, 0.5]);
    expect(ringFor(chain, 0.5)).toEqual({ ringMagnification: 0, beyond: undefined });
    expect(ringFor(chain, 0.6)).toEqual({ ringMagnification: 0, beyond: 'most' });
    expect(ringFor(chain, 0.4)).toEqual({ ringMagnification: 0, beyond: 'least' });
  });

  it('says at which end a magnification out of reach lies, and how near it can come', () => {
    const chain = chainOf(body, twice, ...tubes, long);
    expect(ringFor(chain, 0.3)).toEqual({ ringMagnification: 0, beyond: 'least' });
    expect(ringFor(chain, 3)).toEqual({ ringMagnification: 0.3, beyond: 'most' });
  });

  it('finds every setting again, close-up lenses and either order included', () => {
    const between = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    const order = fc.constantFrom<ChainPart[]>(
      [body, long],
      [body, twice, ...tubes, long],
      [body, ...tubes, twice, long],
      [body, tube(20), twice, tube(48), long, { kind: 'close-up', powerDpt: 1.5 }],
    );
    fc.assert(
      fc.property(order, between, (parts, turned) => {
        const chain = chainOf(...parts);
        const ring = 0.3 * turned;
        const found = ringFor(chain, traceChain(chain, ring).magnification!)!;
        expect(found.ringMagnification).toBeCloseTo(ring, 9);
        expect(found.beyond).toBeUndefined();
      }),
    );
  });

  it('a lens that grows longer turns back, and its reach is its turning point', () => {
    // f from 100 to 200 mm over m0 0 to 1 on 300 mm of tubes: m1 = m0 + 300/f has its least inside.
    const closest = { fromSensorMm: 800, magnification: 1 };
    const chain = chainOf(body, tube(300), { kind: 'lens', focalMm: 100, closest });
    const turning = Math.sqrt(300 * 100);
    const [least, most] = reach(chain)!;
    expect(least).toBeCloseTo((turning - 100) / 100 + 300 / turning, 9);
    expect(most).toBeCloseTo(3, 12);
    const found = ringFor(chain, 2.8)!;
    expect(found.beyond).toBeUndefined();
    expect(traceChain(chain, found.ringMagnification).magnification).toBeCloseTo(2.8, 9);
    const lowest = ringFor(chain, least)!;
    expect(traceChain(chain, lowest.ringMagnification).magnification).toBeCloseTo(least, 5);
  });

  it('the ring by its engraved distance', () => {
    expect(ringForDistance(long, 850)).toEqual({ ringMagnification: 0.3, beyond: undefined });
    expect(ringForDistance(long, 700)).toEqual({ ringMagnification: 0.3, beyond: 'most' });
    expect(ringForDistance(long, Number.POSITIVE_INFINITY).ringMagnification).toBe(0);
    const { ringMagnification } = ringForDistance(long, 2000);
    expect(traceChain(chainOf(body, long), ringMagnification).subjectToSensorMm).toBeCloseTo(
      2000,
      6,
    );
    const noRing: LensPart = { kind: 'lens', focalMm: 100 };
    expect(ringForDistance(noRing, 900)).toEqual({ ringMagnification: 0, beyond: 'most' });
  });

  it('the engraved distance is the thin lens’s own', () => {
    expect(subjectToSensorMm(50, 1)).toBe(200);
    expect(subjectToSensorMm(50, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('laws', () => {
  const lengths = fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 4 });

  it('tubes side by side may change places', () => {
    fc.assert(
      fc.property(lengths, (list) => {
        const forth = chainOf(body, twice, ...list.map(tube), long);
        const back = chainOf(body, twice, ...list.toReversed().map(tube), long);
        const a = traceChain(forth, 0.2);
        expect(a.magnification).toBeCloseTo(traceChain(back, 0.2).magnification!, 10);
        const stops = (losses: readonly { stops: number }[]) => losses.map((loss) => loss.stops);
        const there = stops(lossByPart(forth, 0.2)).slice(2, -1);
        const again = stops(lossByPart(back, 0.2)).slice(2, -1).toReversed();
        for (const [index, share] of there.entries()) expect(share).toBeCloseTo(again[index]!, 10);
      }),
    );
  });

  it('losses add up whatever stands where', () => {
    const part = fc.oneof(
      fc.integer({ min: 0, max: 60 }).map(tube),
      fc
        .record({
          factor: fc.constantFrom(1.4, 1.7, 2),
          lengthMm: fc.integer({ min: 10, max: 60 }),
        })
        .map((made): ChainPart => ({ kind: 'converter', ...made })),
    );
    const ring = fc.double({ min: 0, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(fc.array(part, { maxLength: 6 }), ring, (between, m0) => {
        const chain = chainOf(body, ...between, long);
        const losses = lossByPart(chain, m0);
        expect(losses.length).toBe(between.length + 2);
        const sum = losses.reduce((total, { stops }) => total + stops, 0);
        expect(sum).toBeCloseTo(traceChain(chain, m0).lightLossStops, 9);
        for (const { stops } of losses) expect(stops).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
