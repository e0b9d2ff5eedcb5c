/**
 * How the program speaks: the words that it leaves to others, one apostrophe, sentences that are read
 * at once. Over every message and over the language's own descriptions; all offenders are listed.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const read = (name: string): string => readFileSync(path.join(root, name), 'utf8');

const messages = Object.keys(JSON.parse(read('shared/words/messages.json')));

/** Titles and descriptions of the schema, wherever they stand. */
function saidIn(node: unknown): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    typeof value === 'string' && (key === 'title' || key === 'description')
      ? [value]
      : saidIn(value),
  );
}

const described = saidIn(JSON.parse(read('schemas/shootplan.schema.json')));
const texts = [...messages, ...described];

/** What no camera person says, and what means two things. */
const AVOIDED: readonly RegExp[] = [
  /\bworks? as\b/i,
  /\breckon/i,
  /\bc[oa]mes? to\b/i,
  /\bmend(?:s|ed|ing)?\b/i,
  /\bworked out\b/i,
  /\b(?:is|are) no (?!longer|room|frame)(?:key|name|mirror|film|bubble|boom|number|value)\b/i,
  /\bof what\b/i,
  /\bprice\b/i,
  /\bway out\b/i,
  /\bgreatest\b/i,
  /\bhonest\b/i,
  /\brim\b/i,
  /\bcall sheet\b/i,
  /\btoo (?:dark|bright)\b/i,
  /\ban information\b/i,
  /\basks? for\b/i,
  /\bLeft out:/,
  /\bas it stands\b/i,
];

/** More words than this nobody takes in while their hands are wet. */
const MOST_WORDS = 25;

/** Names and what stands in brackets aside. Formulas and long lists of names are looked at, not read. */
const wordsIn = (sentence: string): number =>
  sentence
    .replace(/`[^`]*`/g, 'x')
    .replace(/\([^()]*\)/g, '')
    .split(/\s+/)
    .filter((word) => /[\p{L}{]/u.test(word)).length;

const isFormula = (sentence: string): boolean => /[=·√]/.test(sentence);
const isListOfNames = (sentence: string): boolean => (sentence.match(/`/g) ?? []).length > 10;

it('there is something to say', () => {
  expect(messages.length).toBeGreaterThan(1000);
  expect(described.length).toBeGreaterThan(200);
});

it('no word that is avoided', () => {
  const offenders = texts.flatMap((text) =>
    AVOIDED.filter((word) => word.test(text)).map((word) => `${word.source}: ${text}`),
  );
  expect(offenders).toEqual([]);
});

it('one apostrophe, the straight one', () => {
  expect(texts.filter((text) => /[\u2018\u2019\u201c\u201d]/.test(text))).toEqual([]);
});

it(`no sentence over ${MOST_WORDS} words`, () => {
  const sentences = texts.flatMap((text) => text.split(/(?<=[.!?;])\s+/));
  const long = sentences.filter(
    (one) => !isFormula(one) && !isListOfNames(one) && wordsIn(one) > MOST_WORDS,
  );
  expect(long).toEqual([]);
});
