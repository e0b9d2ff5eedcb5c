import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { expect } from 'vitest';
import {
  ANNOTATIONS,
  type SchemaDocument,
  type SchemaNode,
  target,
} from '../../schemas/schema-document.ts';
import type { DefName } from '../../shared/plan/generated/names.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { lowerEntry } from '../../shared/plan/lower.ts';
import { isError } from '../../shared/plan/shape-problems.ts';
import { laws } from '../support/each.ts';
import { entryId } from '../support/entry-id.ts';
import { nodeOf } from './support/node-of.ts';

const schema = JSON.parse(
  readFileSync(path.resolve(import.meta.dirname, '../../schemas/shootplan.schema.json'), 'utf8'),
) as SchemaDocument;
const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true, strictRequired: false });
ajv.addVocabulary(ANNOTATIONS);
ajv.addSchema(schema);

const from = { file: 'file:///plan', entry: entryId('shots/drift') };
// A state of a check is a word or a record, and never an entry.
const defs = (Object.keys(SHAPES) as DefName[]).filter((def) => def !== 'check-state');

/** An example with everything as text, as the plan's own reading gives it. */
const asText = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(asText)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, asText(inner)]))
      : String(value);

/** A whole record made of the examples of its keys, those of records in it made whole too. */
function whole(node: SchemaNode): Record<string, unknown> {
  const pairs = Object.entries(node.properties ?? {}).map(([key, property]) => {
    const inner = schema.$defs[target(property) ?? ''];
    return [
      key,
      inner?.properties && inner.type === 'object' ? whole(inner) : asText(property.examples?.[0]),
    ];
  });
  return Object.fromEntries(pairs);
}

const words = [
  '',
  'open',
  'led',
  '16',
  '1,5 kg',
  '24 mm',
  'f/8',
  'yes',
  '[',
  'Far Off',
  '0 mm',
  '1e999',
];
const keys = [
  ...new Set(defs.flatMap((def) => Object.keys(SHAPES[def].keys))),
  'x',
  '__proto__',
  '',
];

const stray: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(null, ...words),
  fc.string({ maxLength: 6 }),
  fc.array(fc.constantFrom<unknown>(null, ...words), { maxLength: 2 }),
  fc.dictionary(fc.constantFrom(...keys), fc.constantFrom<unknown>(null, ...words), {
    maxKeys: 2,
    noNullPrototype: true,
  }),
);

interface Mutation {
  readonly at: number;
  readonly how: 'remove' | 'replace' | 'rename' | 'edit';
  readonly key: string;
  readonly value: unknown;
  readonly cut: number;
}

const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.nat(200),
  how: fc.constantFrom('remove', 'replace', 'rename', 'edit'),
  key: fc.constantFrom(...keys),
  value: stray,
  cut: fc.nat(10),
});

/** Every mapping in a value, outermost first. */
const mappings = (value: unknown): Record<string, unknown>[] => {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.values(value).flatMap(mappings);
  return Array.isArray(value) ? below : [value as Record<string, unknown>, ...below];
};

function mutate(
  value: Record<string, unknown>,
  { at, how, key, value: other, cut }: Mutation,
): void {
  const spots = mappings(value).flatMap((map) => Object.keys(map).map((own) => ({ map, own })));
  const spot = spots[at % spots.length];
  if (!spot) return;
  const { map, own } = spot;
  const old = map[own];
  if (how === 'remove' || how === 'rename') delete map[own];
  if (how === 'rename')
    Object.defineProperty(map, key, {
      value: old,
      enumerable: true,
      writable: true,
      configurable: true,
    });
  if (how === 'replace') map[own] = other;
  if (how === 'edit' && typeof old === 'string') map[own] = old.slice(0, cut) + old.slice(cut + 1);
}

laws(
  defs,
  (def) => def,
  (def, law) => {
    const judge = ajv.compile({ $ref: `${schema.$id}#/$defs/${def}` });
    const example = JSON.stringify(whole(schema.$defs[def]!));

    law('has no problem where all its examples stand together', () => {
      const { problems, fields } = lowerEntry(def, nodeOf(JSON.parse(example)), from);
      expect(problems).toEqual([]);
      expect(new Set(Object.values(fields).map(({ state }) => state))).toEqual(new Set(['known']));
    });

    law('has an error exactly where the schema refuses it, each in words of our own', () => {
      fc.assert(
        fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) => {
          const value = JSON.parse(example) as Record<string, unknown>;
          for (const one of mutations) mutate(value, one);
          const { problems } = lowerEntry(def, nodeOf(value), from);
          expect(problems.some(isError)).toBe(!judge(value));
          expect(problems.map(({ code }) => code)).not.toContain('not-allowed');
          const places = problems.map(({ at }) => JSON.stringify([at.path, at.part]));
          expect(new Set(places).size).toBe(places.length);
        }),
        { numRuns: 150 },
      );
    });
  },
);
