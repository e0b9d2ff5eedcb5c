/**
 * What is remembered against what remembers nothing: graphs of random queries, read, set, swept and
 * tidied in any order, answer as the same queries worked out from nothing at every reading. Some
 * values pass, some are missing, some computations fail and some readers catch that.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameData } from '../../shared/engine/equal.ts';
import { Graph, type Query } from '../../shared/engine/graph.ts';
import { manyRuns } from '../support/runs.ts';

const KEYS = 5;
type Value = { readonly n: number } | undefined;

/** A query over the layer below it (the first: over the inputs). */
interface Layer {
  /** How many values are held; 0: all. */
  readonly holds: number;
  /** Whether equal values keep what follows from them. */
  readonly byData: boolean;
  readonly shift: number;
  readonly factor: number;
  /** Where what is read first comes to one of these, by 5: */
  readonly missingAt: number;
  readonly failsAt: number;
  readonly catches: boolean;
}

type Step =
  | { readonly do: 'set'; readonly key: number; readonly value: number }
  | { readonly do: 'delete'; readonly key: number }
  | { readonly do: 'read'; readonly layer: number; readonly key: number }
  | { readonly do: 'sweep'; readonly all: boolean };

const layer = fc.record<Layer>({
  holds: fc.integer({ min: 0, max: 3 }),
  byData: fc.boolean(),
  shift: fc.integer({ min: 0, max: KEYS - 1 }),
  factor: fc.integer({ min: -2, max: 2 }),
  missingAt: fc.integer({ min: 0, max: 9 }),
  failsAt: fc.integer({ min: 0, max: 14 }),
  catches: fc.boolean(),
});

/** As people work: mostly one value back and forth, and what is shown of it read each time. */
const keyOf = fc.oneof(
  { weight: 3, arbitrary: fc.constant(0) },
  { weight: 2, arbitrary: fc.nat({ max: KEYS - 1 }) },
);

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc
      .tuple(keyOf, fc.integer({ min: -4, max: 4 }))
      .map(([key, value]): Step => ({ do: 'set', key, value })),
  },
  { weight: 1, arbitrary: keyOf.map((key): Step => ({ do: 'delete', key })) },
  {
    weight: 7,
    arbitrary: fc
      .tuple(fc.nat({ max: 5 }), keyOf)
      .map(([layer, key]): Step => ({ do: 'read', layer, key })),
  },
  { weight: 1, arbitrary: fc.boolean().map((all): Step => ({ do: 'sweep', all })) },
);

const by5 = (n: number): number => ((n % 5) + 5) % 5;

/** What a layer says under a key, by what reads the one below. */
function said(spec: Layer, key: number, read: (key: number) => Value): Value {
  const tried = (at: number): Value => {
    if (!spec.catches) return read(at);
    try {
      return read(at);
    } catch {
      return { n: -1 };
    }
  };
  const first = tried((key + spec.shift) % KEYS)?.n ?? 0;
  if (by5(first) === spec.failsAt) throw new Error(`no ${first} under ${key}`);
  if (by5(first) === spec.missingAt) return undefined;
  // Which others are read follows from what was read.
  const second = first > 0 ? (tried(by5(first + key))?.n ?? 7) : 0;
  return { n: Math.max(-50, Math.min(50, first * spec.factor + second)) };
}

const outcome = (read: () => Value): string => {
  try {
    return JSON.stringify(read()) ?? 'missing';
  } catch (error) {
    return String(error);
  }
};

/** Graph and model of the same layers. */
function made(layers: readonly Layer[]) {
  const graph = new Graph();
  const input = graph.input<number>('input', 0);
  const values = new Array<number>(KEYS).fill(0);
  let below: Query<Value> = (key) => ({ n: input.get(key) });
  let model = (key: number): Value => ({ n: values[key]! });
  const both = layers.map((spec, index) => {
    const [lower, lowerModel] = [below, model];
    const compute = (key: string) => said(spec, Number(key), (at) => lower(String(at)));
    const name = `layer ${index}`;
    if (spec.holds > 0) below = graph.passing(name, compute, spec.holds);
    else below = graph.query(name, compute, spec.byData ? sameData : Object.is);
    model = (key) => said(spec, key, lowerModel);
    return { query: below, model };
  });
  return { graph, input, values, both };
}

describe('what is remembered', () => {
  it('answers as what remembers nothing, after any operations', () => {
    const most = (layers: readonly Layer[]) => layers.reduce((sum, { holds }) => sum + holds, 0);
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 6 }),
        fc.array(step, { minLength: 20, maxLength: 160 }),
        (layers, steps) => {
          const { graph, input, values, both } = made(layers);
          for (const each of steps) {
            if (each.do === 'set') {
              values[each.key] = each.value;
              input.set(String(each.key), each.value);
            } else if (each.do === 'delete') {
              values[each.key] = 0;
              input.delete(String(each.key));
            } else if (each.do === 'sweep') graph.sweep(each.all);
            else {
              const { query, model } = both[each.layer % both.length]!;
              const answered = outcome(() => query(String(each.key)));
              expect(answered).toBe(outcome(() => model(each.key)));
            }
            expect(graph.held).toBeLessThanOrEqual(most(layers));
          }
          for (const { query, model } of both)
            for (let key = 0; key < KEYS; key++)
              expect(outcome(() => query(String(key)))).toBe(outcome(() => model(key)));
        },
      ),
      { numRuns: manyRuns(600) },
    );
  }, 3_600_000);
});

describe('a passing query', () => {
  it('keeps one place for a value that is worked out again and again', () => {
    for (const holds of [1, 2, 3, 7]) {
      const graph = new Graph();
      const input = graph.input('input', 0);
      const large = graph.passing('large', (key) => ({ n: input.get(key) }), holds);
      const small = graph.query('small', (key) => large(key).n);
      for (let value = 1; value <= 5 * holds; value++) {
        input.set('a', value);
        expect(small('a')).toBe(value);
        expect(large('a')).toEqual({ n: value });
        expect(graph.held).toBe(1);
      }
    }
  });

  it('tells of a value that is missing now and had been let go', () => {
    const graph = new Graph();
    const input = graph.input('input', 1);
    const large = graph.passing(
      'large',
      (key) => (input.get(key) > 0 ? { n: input.get(key) } : undefined),
      1,
    );
    const small = graph.query('small', (key) => large(key)?.n ?? 'missing');
    expect([small('a'), small('b')]).toEqual([1, 1]);
    input.set('a', 0);
    expect(small('a')).toBe('missing');
  });

  it('is let go whole, and is what it was when it is asked for again', () => {
    const graph = new Graph();
    const input = graph.input('input', 0);
    const large = graph.passing('large', (key) => ({ n: input.get(key) }), 2);
    for (const key of ['a', 'b', 'c']) large(key);
    expect(graph.held).toBe(2);
    graph.sweep(true);
    expect(graph.held).toBe(0);
    expect(large('a')).toEqual({ n: 0 });
  });

  it('holds one value at least', () => {
    expect(() => new Graph().passing('none', () => 0, 0)).toThrow(RangeError);
  });
});

describe('what failed', () => {
  it('is not taken for known by a reader that caught it', () => {
    const graph = new Graph();
    const input = graph.input('input', -1);
    const strict = graph.query('strict', (key) => {
      if (input.get(key) < 0) throw new Error('negative');
      return input.get(key);
    });
    const lenient = graph.query('lenient', (key) => {
      try {
        return strict(key);
      } catch {
        return 'failed';
      }
    });
    const shown = graph.query('shown', (key) => `${lenient(key)}`);
    expect(shown('a')).toBe('failed');
    input.set('a', 3);
    expect(shown('a')).toBe('3');
    input.set('a', -2);
    expect(shown('a')).toBe('failed');
  });

  it('is met where it is read, by a reader that can say something else', () => {
    const graph = new Graph();
    const input = graph.input('input', 1);
    const strict = graph.query('strict', (key) => {
      if (input.get(key) < 0) throw new Error('negative');
      return input.get(key);
    });
    const lenient = graph.query('lenient', (key) => {
      try {
        return strict(key);
      } catch (error) {
        return (error as Error).message;
      }
    });
    expect(lenient('a')).toBe(1);
    input.set('a', -1);
    expect(lenient('a')).toBe('negative');
  });

  it('is no circle where two queries have only changed who reads whom', () => {
    const graph = new Graph();
    const first = graph.input('first', 'a');
    const half: Record<string, Query<string>> = {};
    for (const [name, other] of [
      ['a', 'b'],
      ['b', 'a'],
    ] as const)
      half[name] = graph.query(name, () =>
        first.get('') === name ? name : `${name} after ${half[other]!('')}`,
      );
    expect(half.b!('')).toBe('b after a');
    first.set('', 'b');
    expect(half.a!('')).toBe('a after b');
    expect(half.b!('')).toBe('b');
    first.set('', 'a');
    expect(half.b!('')).toBe('b after a');
  });
});
