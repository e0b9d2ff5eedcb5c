import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameData } from '../../shared/engine/equal.ts';
import { CircularQueryError, Graph } from '../../shared/engine/graph.ts';

describe('sameData', () => {
  it('takes the same in another order for something else, in records and maps', () => {
    const pairs = [
      ['a', 1],
      ['b', [{ c: null }]],
    ] as const;
    const turned = [...pairs].reverse();
    expect(sameData(Object.fromEntries(pairs), Object.fromEntries(pairs))).toBe(true);
    expect(sameData(Object.fromEntries(pairs), Object.fromEntries(turned))).toBe(false);
    expect(sameData(new Map<string, unknown>(pairs), new Map<string, unknown>(pairs))).toBe(true);
    expect(sameData(new Map<string, unknown>(pairs), new Map<string, unknown>(turned))).toBe(false);
    expect(sameData(new Map([['a', 1]]), new Map([['b', 1]]))).toBe(false);
    expect(sameData({ a: undefined }, { b: undefined })).toBe(false);
  });
});

describe('Graph', () => {
  it('recomputes only what read the changed input', () => {
    const graph = new Graph();
    const number = graph.input('number', 0);
    const doubled = graph.query('doubled', (key) => number.get(key) * 2);
    const sum = graph.query('sum', () => doubled('a') + doubled('b'));
    number.set('a', 1);
    number.set('b', 2);
    expect(sum('')).toBe(6);
    graph.computed.clear();
    number.set('b', 5);
    expect(sum('')).toBe(12);
    expect(Object.fromEntries(graph.computed)).toEqual({ doubled: 1, sum: 1 });
  });

  it('stops where a recomputed value equals the old one', () => {
    const graph = new Graph();
    const text = graph.input('text', '');
    const words = graph.query('words', (key) => text.get(key).trim().split(/\s+/), sameData);
    const count = graph.query('count', (key) => words(key).length);
    text.set('a', 'one two');
    expect(count('a')).toBe(2);
    graph.computed.clear();
    text.set('a', 'one   two ');
    expect(count('a')).toBe(2);
    expect(Object.fromEntries(graph.computed)).toEqual({ words: 1 });
  });

  it('records the reading of something absent', () => {
    const graph = new Graph();
    const entry = graph.input<string | undefined>('entry', undefined);
    const found = graph.query('found', (key) => entry.get(key) !== undefined);
    expect(found('lens')).toBe(false);
    entry.set('lens', 'x');
    expect(found('lens')).toBe(true);
    entry.delete('lens');
    expect(found('lens')).toBe(false);
  });

  it('forgets dependencies that are no longer read', () => {
    const graph = new Graph();
    const flag = graph.input('flag', true);
    const value = graph.input('value', 0);
    const chosen = graph.query('chosen', () => (flag.get('') ? value.get('left') : 0));
    expect(chosen('')).toBe(0);
    flag.set('', false);
    expect(chosen('')).toBe(0);
    graph.computed.clear();
    value.set('left', 7);
    expect(chosen('')).toBe(0);
    expect(graph.computed.size).toBe(0);
  });

  it('recovers after a computation that threw', () => {
    const graph = new Graph();
    const value = graph.input('value', 0);
    const strict = graph.query('strict', () => {
      if (value.get('') < 0) throw new RangeError('negative');
      return value.get('');
    });
    value.set('', -1);
    expect(() => strict('')).toThrow(RangeError);
    value.set('', 3);
    expect(strict('')).toBe(3);
  });

  it('holds the last values of a passing query and works others out when they are asked for', () => {
    const graph = new Graph();
    const text = graph.input('text', '');
    const large = graph.passing('large', (key) => ({ words: text.get(key).split(' ') }), 2);
    const small = graph.query('small', (key) => large(key).words.length);
    for (const key of ['a', 'b', 'c']) text.set(key, `of ${key}`);
    for (const key of ['a', 'b', 'c']) expect(small(key)).toBe(2);
    graph.computed.clear();
    expect(large('c')).toBe(large('c'));
    expect(Object.fromEntries(graph.computed)).toEqual({});
    expect(large('a').words).toEqual(['of', 'a']);
    // It is what it was: what followed from it stands, and a change is seen as before.
    expect(small('a')).toBe(2);
    expect(Object.fromEntries(graph.computed)).toEqual({ large: 1 });
    text.set('a', 'of all this');
    text.set('b', 'of b and more');
    expect([small('a'), small('b'), small('c')]).toEqual([3, 4, 2]);
    expect(large('b').words).toEqual(['of', 'b', 'and', 'more']);
  });

  it('names a query that needs itself', () => {
    const graph = new Graph();
    const loop: (key: string) => number = graph.query('loop', (key) => loop(key) + 1);
    expect(() => loop('x')).toThrow(CircularQueryError);
  });

  it('lets go of what nobody reads and keeps what was set', () => {
    const graph = new Graph();
    const value = graph.input('value', 0);
    const doubled = graph.query('doubled', (key) => value.get(key) * 2);
    value.set('a', 2);
    doubled('a');
    doubled('never-set');
    expect(graph.size).toBe(4);
    graph.sweep(true);
    expect(graph.size).toBe(1);
    expect(doubled('a')).toBe(4);
  });

  it('equals a computation from nothing after any sequence of changes', () => {
    const step = fc.record({
      key: fc.integer({ min: 0, max: 5 }),
      value: fc.integer({ min: -3, max: 3 }),
      read: fc.boolean(),
      sweep: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), fc.boolean(), (steps, passes) => {
        const graph = new Graph();
        const input = graph.input('input', 0);
        const sign = graph.query('sign', (key) => Math.sign(input.get(key)));
        // Reads a different set of inputs depending on what it finds.
        const picked = (key: string) =>
          sign(key) >= 0 ? input.get(String((Number(key) + 1) % 6)) : sign('0');
        const pick = passes ? graph.passing('pick', picked, 2) : graph.query('pick', picked);
        const total = graph.query('total', () =>
          [0, 1, 2, 3, 4, 5].reduce((sum, key) => sum + pick(String(key)) * (key + 1), 0),
        );
        const values = [0, 0, 0, 0, 0, 0];
        for (const { key, value, read, sweep } of steps) {
          values[key] = value;
          input.set(String(key), value);
          if (read) total('');
          if (sweep) graph.sweep(true);
        }
        const expected = values.reduce((sum, value, key) => {
          const one = value >= 0 ? values[(key + 1) % 6]! : Math.sign(values[0]!);
          return sum + one * (key + 1);
        }, 0);
        expect(total('')).toBe(expected + 0);
      }),
    );
  });
});
