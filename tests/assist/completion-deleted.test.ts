/**
 * Each value of each sample taken out in turn: is it offered where it stood? Counted over all
 * values; asked for at least 95 % of those that can be chosen: names, words, checks, files, and
 * values that a plan can propose. Left out of that, by what they are: words for people, and data
 * read off a maker's sheet or a ruler, which nothing in a plan could know.
 */
import { expect, test } from 'vitest';
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import type { KeyShape, Shape } from '../../shared/plan/shape.ts';
import type { QuantityId } from '../../shared/quantity/index.ts';
import { PLAN } from '../support/plans.ts';
import { coreBeside, positionAt, sample, sampleNames } from './support/completing.ts';

interface Value {
  readonly sample: string;
  readonly path: readonly (string | number)[];
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

function valuesIn(name: string): Value[] {
  const text = sample(name);
  const found: Value[] = [];
  const walk = (node: unknown, path: readonly (string | number)[]): void => {
    if (isMap(node)) for (const { key, value } of node.items) walk(value, [...path, String(key)]);
    else if (isSeq(node))
      for (const [index, item] of node.items.entries()) walk(item, [...path, index]);
    else if (isScalar(node)) {
      const [start, end] = (node as Node).range!;
      found.push({ sample: name, path, text: text.slice(start, end), start, end });
    }
  };
  walk(parseDocument(text).contents, []);
  return found;
}

/** The key of the language that a value stands under, and its shape. */
function shapeAt(path: Value['path']): { key: string; shape: Shape } | null {
  let shape: Shape = { kind: 'record', of: 'plan' };
  let key = '';
  for (const step of path) {
    if (shape.kind === 'list') shape = shape.item;
    else if (shape.kind === 'map') shape = shape.item;
    else if (shape.kind === 'record' || shape.kind === 'word-or-record') {
      const found: KeyShape | undefined = SHAPES[shape.of].keys[String(step)];
      if (!found) return null;
      key = String(step);
      shape = found.shape;
    } else return null;
  }
  return { key, shape };
}

/** Data of things, by kind of quantity: they are measured, not chosen. */
const DATA: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'length',
  'length-or-zero',
  'offset',
  'size',
  'mass',
  'bitrate',
  'luminance',
  'illuminance',
  'thickness-range',
  'ratio',
  'stops',
  'speed',
  'bound',
]);
/** … and by key: what only the maker, a stop-watch or a protractor knows. */
const DATA_KEYS: ReadonlySet<string> = new Set(['photosites', 'lasts', 'up', 'across', 'readout']);
/** Lengths that a shot chooses. */
const CHOSEN_KEYS: ReadonlySet<string> = new Set(['field']);

function isChosen({ path, text }: Value): boolean {
  const at = shapeAt(path);
  if (!at) return false;
  if (at.shape.kind === 'text') return path[0] === 'use';
  if (at.shape.kind !== 'quantity') return at.shape.kind !== 'name' || at.key === 'every-shot';
  if (CHOSEN_KEYS.has(at.key)) return /[0-9] ?[a-z]/.test(text);
  return !DATA.has(at.shape.of) && !DATA_KEYS.has(at.key);
}

function isOffered({ sample: name, text, start, end }: Value): boolean {
  const whole = sample(name);
  const left = whole.slice(0, start) + whole.slice(end);
  const { items } = coreBeside(left).completions(PLAN, positionAt(left, start));
  return items.some(({ label }) => label === text);
}

test('what is taken out is offered again', () => {
  const all = sampleNames.flatMap(valuesIn).map((value) => ({
    ...value,
    chosen: isChosen(value),
    offered: isOffered(value),
  }));
  const chosen = all.filter(({ chosen: is }) => is);
  const share = (some: typeof all) => some.filter(({ offered }) => offered).length / some.length;
  const percent = (part: number) => `${(part * 100).toFixed(1)} %`;
  const missed = chosen.filter(({ offered }) => !offered);
  console.info(
    [
      `of all ${all.length} values ${percent(share(all))} are offered again;`,
      `of the ${chosen.length} that can be chosen ${percent(share(chosen))}`,
      ...missed.map(({ sample: name, path, text }) => `  not ${name} ${path.join('/')}: ${text}`),
    ].join('\n'),
  );
  expect(share(chosen)).toBeGreaterThanOrEqual(0.95);
  expect(chosen.length / all.length).toBeGreaterThan(0.5);
});
