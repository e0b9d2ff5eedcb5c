/** The outline of a plan: complete, nested, and never dearer than reading the text. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { OutlineSymbol } from '../../shared/api/facade.ts';
import type { Position, Range } from '../../shared/api/located.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { BENCH } from './support/bench.ts';

const outline = (text: string): readonly OutlineSymbol[] => coreWith(text).symbols(PLAN);

const drawn = (symbols: readonly OutlineSymbol[], margin = ''): string[] =>
  symbols.flatMap(({ name, detail, children }) => [
    `${margin}${name}${detail && ` · ${detail}`}`,
    ...drawn(children, `${margin}  `),
  ]);

const atMost = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character <= b.character);

const within = (inner: Range, outer: Range): boolean =>
  atMost(outer.start, inner.start) && atMost(inner.end, outer.end);

function expectNested(symbols: readonly OutlineSymbol[]): void {
  symbols.forEach((symbol, index) => {
    expect(within(symbol.selection, symbol.range), symbol.name).toBe(true);
    expect(symbol.name).not.toBe('');
    for (const child of symbol.children) expect(within(child.range, symbol.range)).toBe(true);
    const next = symbols[index + 1];
    if (next) expect(atMost(symbol.range.end, next.range.start), symbol.name).toBe(true);
    expectNested(symbol.children);
  });
}

afterEach(() => vi.restoreAllMocks());

describe('an outline', () => {
  it('shows sections, groups and entries with what tells them apart', () => {
    expect(drawn(outline(BENCH))).toEqual([
      'shootplan · 1',
      'title · Frost',
      'deliver · 1920 x 1080, 25 fps',
      'mains · 50 Hz',
      'kit',
      '  bodies',
      '    body-a',
      '  lenses',
      '    long-200 · 200 mm, f/4 to 32',
      '  converters',
      '    twice · 2x',
      'rigs',
      '  plain · body-a, long-200',
      '  doubled · body-a, twice, long-200',
      'lights',
      '  lamp · tungsten',
      'subjects',
      '  frost · solid, 80 x 60 mm, 2 mm',
      'shots',
      '  far · frost, infinity, f/16',
      '  near · frost, 72 mm, f/16',
    ]);
  });

  it('gives an entry its whole text, and its key to be selected', () => {
    const lines = BENCH.split('\n');
    const near = outline(BENCH).at(-1)!.children[1]!;
    const key = lines.indexOf('  near:');
    expect(near.selection).toEqual({
      start: { line: key, character: 2 },
      end: { line: key, character: 6 },
    });
    expect(lines[near.range.end.line]!.slice(0, near.range.end.character)).toBe(
      '    light: [lamp]',
    );
  });

  it('stays whole where an entry is broken, doubled or being typed', () => {
    const text = BENCH.replace('focal-length: 200 mm', 'focal-length: "200 mm').replace(
      '  near:',
      '  far: { aperture: f/8 }\n  :\n  near:',
    );
    const symbols = outline(text);
    expectNested(symbols);
    const names = drawn(symbols).map((line) => line.trim().split(' · ')[0]);
    expect(names.filter((name) => name === 'far')).toHaveLength(2);
    expect(names).toContain('long-200');
    expect(names).toContain('near');
  });

  it('reads sections that stand on one line', () => {
    const text =
      'shots: { one: { field: 24 mm }, two: { ring: closest } }\nclips: { one: [{ file: a.mp4 }] }\n';
    expect(drawn(outline(text))).toEqual([
      'shots',
      '  one · 24 mm',
      '  two · closest',
      'clips',
      '  one · 1 clip',
    ]);
    expectNested(outline(text));
  });

  it('shows what a plan says as plain text of bearable length', () => {
    const text = `title: "a\\u202eb"\nabout: ${'long '.repeat(100)}\n`;
    const [title, about] = outline(text);
    expect(title?.detail).toBe('a\\u{202e}b');
    expect(about!.detail.length).toBeLessThanOrEqual(60);
  });

  it('is empty for an empty file and one that is not there', () => {
    expect(outline('')).toEqual([]);
    expect(coreWith('').symbols('file:///w/none.shootplan.yaml')).toEqual([]);
  });

  it('works nothing out, however many shots there are', () => {
    const figures = vi.spyOn(Analysis.prototype, 'figures');
    const bench = vi.spyOn(Analysis.prototype, 'bench');
    const shots = Array.from(
      { length: 5000 },
      (_, index) => `  shot-${index}:\n    field: 24 mm\n`,
    );
    const symbols = outline(`shots:\n${shots.join('')}`);
    expect(symbols[0]?.children).toHaveLength(5000);
    expect(symbols[0]?.children[4999]).toMatchObject({ name: 'shot-4999', detail: '24 mm' });
    expect(figures).not.toHaveBeenCalled();
    expect(bench).not.toHaveBeenCalled();
  });
});

const SAMPLES = new URL('../../samples/', import.meta.url);

describe('the outline of a whole plan is nested', () => {
  it('in every sample', () => {
    each(
      readdirSync(SAMPLES).filter((name) => name.endsWith('.yaml')),
      (name) => {
        const symbols = outline(readFileSync(new URL(name, SAMPLES), 'utf8'));
        expect(symbols.length).toBeGreaterThan(3);
        expectNested(symbols);
      },
    );
  });
});
