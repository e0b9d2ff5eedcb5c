/**
 * Each value of each sample taken out in turn: is it offered where it stood? Counted over all
 * values; asked for at least 95 % of those that can be chosen: names, words, checks, files, and
 * values that a plan can propose. Left out of that, by what they are: words for people, and data
 * read off a maker's sheet or a ruler, which nothing in a plan could know.
 */
import { expect, test } from 'vitest';
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import { Documents } from '../../server/workspace/documents.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import type { KeyShape, Shape } from '../../shared/plan/shape.ts';
import type { QuantityId } from '../../shared/quantity/index.ts';
import { applied, PLAN } from '../support/plans.ts';
import { coreBeside, positionAt, sample, sampleNames } from './support/completing.ts';

interface Value {
  readonly sample: string;
  readonly path: readonly (string | number)[];
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

function valuesIn(name: string, text = sample(name)): Value[] {
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
const DATA_KEYS: ReadonlySet<string> = new Set([
  'pixels',
  'lifetime',
  'elevation',
  'azimuth',
  'readout',
]);
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

const without = (text: string, { start, end }: Value): string =>
  text.slice(0, start) + text.slice(end);

/** Whether somebody who has the text for the first time is offered the value. */
function isOffered(value: Value): boolean {
  const left = without(sample(value.sample), value);
  const { items } = coreBeside(left).completions(PLAN, positionAt(left, value.start));
  return items.some(({ label }) => label === value.text);
}

/** A part of a value that is taken out, from 0 to 1 of its length. */
type Part = readonly [from: number, to: number];

/**
 * Whether it is offered in the document that it was taken out of, by the way that the language
 * server goes: marked, and giving back the text to the letter.
 */
function isOfferedLive(whole: string, value: Value, part: Part): boolean {
  const core = coreBeside('');
  const documents = new Documents(core);
  documents.open(PLAN, 1, whole);
  const [from, to] = part.map((one) =>
    Math.round(value.start + one * (value.end - value.start)),
  ) as [number, number];
  const range = { start: positionAt(whole, from), end: positionAt(whole, to) };
  documents.change(PLAN, 2, [{ range, text: '' }]);
  const left = whole.slice(0, from) + whole.slice(to);
  const { items } = core.completions(PLAN, range.start);
  const marked = items.filter(({ detail }) => /^previous value\b/.test(detail));
  expect(marked.length).toBeLessThanOrEqual(1);
  if (marked.length > 0) expect(applied(left, marked)).toBe(whole);
  return marked.length > 0;
}

const shareOf = <T>(all: readonly T[], is: (one: T) => boolean): number =>
  all.filter(is).length / all.length;
const percent = (part: number): string => `${(part * 100).toFixed(1)} %`;

const all = sampleNames
  .flatMap((name) => valuesIn(name))
  .map((value) => ({ ...value, chosen: isChosen(value) }));
const chosen = all.filter((value) => value.chosen);

test('what is taken out of a text that nobody saw before is offered, where it can be chosen', () => {
  const offered = new Set(all.filter(isOffered));
  const isIn = (one: Value) => offered.has(one as never);
  console.info(
    [
      `to a fresh reader ${percent(shareOf(all, isIn))} of all ${all.length} values are offered,`,
      `${percent(shareOf(chosen, isIn))} of the ${chosen.length} that can be chosen`,
      ...chosen
        .filter((one) => !isIn(one))
        .map(({ sample: name, path, text }) => `  not ${name} ${path.join('/')}: ${text}`),
    ].join('\n'),
  );
  expect(shareOf(chosen, isIn)).toBeGreaterThanOrEqual(0.95);
  expect(chosen.length / all.length).toBeGreaterThan(0.5);
});

/** Of a spelling of lines that no value depends on, every third value is enough. */
const EACH_ON_WINDOWS = 3;
const asTheyAre = (text: string): string => text;
const asOnWindows = (text: string): string => text.replaceAll('\n', '\r\n');

test.each([
  ['whole', asTheyAre, [0, 1]],
  ['whole, lines ending as on Windows', asOnWindows, [0, 1]],
  ['by its first half', asTheyAre, [0, 0.5]],
  ['by its last half', asTheyAre, [0.5, 1]],
] as const)(
  'what is taken out of an open document, %s, is offered as it was',
  (how, spelt, part) => {
    const live = sampleNames.flatMap((name) => {
      const whole = spelt(sample(name));
      return valuesIn(name, whole)
        .filter(({ start, end }) => end - start > 1 || part[1] - part[0] === 1)
        .filter((_, index) => spelt === asTheyAre || index % EACH_ON_WINDOWS === 0)
        .map((value) => ({ ...value, offered: isOfferedLive(whole, value, part) }));
    });
    const share = shareOf(live, ({ offered }) => offered);
    console.info(
      [
        `taken out ${how}: ${percent(share)} of ${live.length} are offered as they were`,
        ...live
          .filter(({ offered }) => !offered)
          .map(({ sample: name, path, text }) => `  not ${name} ${path.join('/')}: ${text}`),
      ].join('\n'),
    );
    expect(share).toBeGreaterThanOrEqual(0.95);
  },
);
