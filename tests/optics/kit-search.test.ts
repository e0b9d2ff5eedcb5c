/** The kit search against a search that tries every order of every subset, one after the other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangeChain } from '../../shared/optics/arrangement.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import { type KitSearch, waysToReach, waysWith } from '../../shared/optics/kit-search.ts';
import type { ChainPart } from '../../shared/optics/parts.ts';
import { reach, ringFor } from '../../shared/optics/reach.ts';

const TOLERANCE = 0.005;

const tube = fc.record({
  kind: fc.constant('tube' as const),
  lengthMm: fc.constantFrom(8, 12, 12, 20, 25, 36, 65),
});
const converter = fc.record({
  kind: fc.constant('converter' as const),
  factor: fc.constantFrom(1.4, 1.7, 2),
  lengthMm: fc.constantFrom(22, 40, 53, undefined),
});
const closeUp = fc.record({
  kind: fc.constant('close-up' as const),
  powerDpt: fc.constantFrom(1, 2, 4, 8),
});
const lens = fc.record({
  kind: fc.constant('lens' as const),
  focalMm: fc.constantFrom(35, 50, 100, 200),
  closest: fc.constantFrom(
    undefined,
    { fromSensorMm: 310, magnification: 1 },
    { fromSensorMm: 450, magnification: 0.15 },
    { fromSensorMm: 850, magnification: 0.3 },
  ),
  lengthMm: fc.constantFrom(45, 120, 165, undefined),
  growsMm: fc.constantFrom(undefined, 20),
  pupilRatio: fc.constantFrom(undefined, 0.8, 1.3),
});

const search: fc.Arbitrary<KitSearch> = fc.record({
  body: fc.constant({ kind: 'body' as const, flangeMm: 44 }),
  lens,
  kit: fc.record({
    tubes: fc.array(tube, { maxLength: 3 }),
    converters: fc.array(converter, { maxLength: 2 }),
    closeUps: fc.array(closeUp, { maxLength: 2 }),
  }),
  magnification: fc.double({ min: 0.05, max: 6, noNaN: true }),
  tolerance: fc.constant(TOLERANCE),
});

const permutations = <T>(items: readonly T[]): T[][] =>
  items.length === 0
    ? [[]]
    : items.flatMap((item, index) =>
        permutations(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
      );

const subsetsOf = <T>(items: readonly T[]): T[][] =>
  items.reduce<T[][]>((all, item) => all.concat(all.map((some) => some.concat(item))), [[]]);

/** Which optics an order is, whatever pieces that are alike are called: tubes side by side add. */
function shapeOf(behind: readonly ChainPart[], before: readonly ChainPart[]): string {
  const gaps: string[][] = [[]];
  for (const part of behind) {
    if (part.kind === 'tube') gaps.at(-1)!.push(String(part.lengthMm));
    if (part.kind === 'converter') gaps.push([`${part.factor}/${part.lengthMm}`], []);
  }
  const rims = before.map((part) => (part.kind === 'close-up' ? part.powerDpt : 0)).sort();
  return `${gaps.map((gap) => gap.sort().join('+')).join(' | ')} : ${rims.join('+')}`;
}

/** All orders that reach the magnification, by how many pieces they take. */
function everyWay({ body, lens, kit, magnification }: KitSearch): Map<number, Set<string>> {
  const found = new Map<number, Set<string>>();
  for (const before of subsetsOf(kit.closeUps))
    for (const chosen of subsetsOf<ChainPart>([...kit.tubes, ...kit.converters]))
      for (const behind of permutations(chosen)) {
        const arranged = arrangeChain([body, ...behind, lens, ...before]);
        if (!arranged.ok) continue;
        const ends = reach(arranged.chain);
        if (!ends || magnification < ends[0] * (1 - TOLERANCE)) continue;
        if (magnification > ends[1] * (1 + TOLERANCE)) continue;
        const { ringMagnification } = ringFor(arranged.chain, magnification, ends)!;
        const trace = traceChain(arranged.chain, ringMagnification);
        if (trace.focus !== 'real' || (trace.workingDistanceMm ?? 1) <= 0) continue;
        const count = before.length + behind.length;
        found.set(count, (found.get(count) ?? new Set()).add(shapeOf(behind, before)));
      }
  return found;
}

const piecesOf = ({ kit }: KitSearch) => ({
  tube: kit.tubes,
  converter: kit.converters,
  'close-up': kit.closeUps,
});

describe('the kit search', () => {
  it('finds, of any number of parts, what trying everything finds, each once', () => {
    fc.assert(
      fc.property(search, (it) => {
        const all = everyWay(it);
        const pieces = piecesOf(it);
        const whole = it.kit.tubes.length + it.kit.converters.length + it.kit.closeUps.length;
        for (let count = 0; count <= whole; count++) {
          const shapes = waysWith(count, it).map(({ behind, before }) =>
            shapeOf(
              behind.map(({ kind, index }) => pieces[kind][index]!),
              before.map(({ kind, index }) => pieces[kind][index]!),
            ),
          );
          expect([...shapes].sort()).toEqual([...(all.get(count) ?? [])].sort());
        }
      }),
      { numRuns: 300 },
    );
  });

  it('offers the fewest parts there are, and every offer reaches the magnification', () => {
    fc.assert(
      fc.property(search, (it) => {
        const { ways } = waysToReach(it, 4);
        const least = Math.min(...everyWay(it).keys());
        if (least === Number.POSITIVE_INFINITY) {
          expect(ways).toEqual([]);
          return;
        }
        expect(ways[0]!.behind.length + ways[0]!.before.length).toBe(least);
        for (const { trace } of ways) {
          const off = Math.abs(trace.magnification! / it.magnification - 1);
          // The tolerance is a share of what the rig reaches, not of what is asked for.
          expect(off).toBeLessThanOrEqual((TOLERANCE / (1 - TOLERANCE)) * 1.0001);
        }
      }),
      {
        numRuns: 300,
        // A lone lens that just misses what is asked for, by the tolerance and a hair.
        examples: [
          [
            {
              body: { kind: 'body', flangeMm: 44 },
              lens: { kind: 'lens', focalMm: 50, lengthMm: 45 },
              kit: {
                tubes: [],
                converters: [{ kind: 'converter', factor: 1.7, lengthMm: 22 }],
                closeUps: [{ kind: 'close-up', powerDpt: 1 }],
              },
              magnification: 0.08457500000000001,
              tolerance: 0.005,
            },
          ],
        ],
      },
    );
  });

  it('goes through eight tubes, two converters and two close-up lenses, though nothing does', () => {
    const kit: KitSearch = {
      body: { kind: 'body', flangeMm: 44 },
      lens: {
        kind: 'lens',
        focalMm: 100,
        closest: { fromSensorMm: 310, magnification: 1 },
        lengthMm: 120,
      },
      kit: {
        tubes: [8, 10, 12, 16, 20, 25, 36, 65].map((lengthMm) => ({ kind: 'tube', lengthMm })),
        converters: [
          { kind: 'converter', factor: 1.4, lengthMm: 22 },
          { kind: 'converter', factor: 2, lengthMm: 53 },
        ],
        closeUps: [
          { kind: 'close-up', powerDpt: 2 },
          { kind: 'close-up', powerDpt: 4 },
        ],
      },
      magnification: 60,
      tolerance: TOLERANCE,
    };
    expect(waysToReach(kit, 4)).toEqual({ ways: [], complete: true });
    // Both converters and every tube, all behind them: the most that there is.
    const [most] = waysToReach({ ...kit, magnification: 12 }, 1).ways;
    expect(most?.trace.magnification).toBeCloseTo(12, 1);
  });

  /** Tubes of `count` different lengths and six converters, as from a rental house. */
  const large = (count: number, magnification: number): KitSearch => ({
    body: { kind: 'body', flangeMm: 44 },
    lens: {
      kind: 'lens',
      focalMm: 100,
      closest: { fromSensorMm: 310, magnification: 1 },
      lengthMm: 120,
    },
    kit: {
      tubes: Array.from({ length: count }, (_, index) => ({ kind: 'tube', lengthMm: 6 + index })),
      converters: [1.2, 1.4, 1.5, 1.7, 2, 3].map((factor) => ({
        kind: 'converter',
        factor,
        lengthMm: 20 * factor,
      })),
      closeUps: [],
    },
    magnification,
    tolerance: TOLERANCE,
  });

  it.each([0.3, 2, 9, 25, 60, 900, 90_000])('has an answer for twenty tubes at %sx', (times) => {
    const { ways, complete } = waysToReach(large(20, times), 4);
    for (const { trace } of ways) expect(trace.magnification! / times).toBeCloseTo(1, 1);
    // Up to three of the converters and any tubes reach 25x by hand: 1.7 · 2 · 3 · 2.45.
    if (times >= 1 && times <= 25) expect(ways.length).toBeGreaterThan(0);
    expect(ways.length > 0 || times > 25 || complete).toBe(true);
  });

  it('says that it did not look at everything where there is too much', () => {
    expect(waysToReach(large(8192, 2), 4).complete).toBe(false);
    const many = large(0, 900);
    const closeUps = Array.from({ length: 60 }, (_, index) => ({
      kind: 'close-up' as const,
      powerDpt: 0.01 + index / 1000,
    }));
    expect(waysToReach({ ...many, kit: { ...many.kit, closeUps } }, 4).complete).toBe(false);
  });
});
