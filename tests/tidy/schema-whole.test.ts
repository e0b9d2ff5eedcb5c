import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { SCHEMA_PATH } from '../../schemas/outputs.ts';
import {
  ANNOTATIONS,
  type SchemaDocument,
  type SchemaNode,
} from '../../schemas/schema-document.ts';
import { each } from '../support/each.ts';

const root = path.resolve(import.meta.dirname, '../..');
const schema = JSON.parse(readFileSync(path.join(root, SCHEMA_PATH), 'utf8')) as SchemaDocument;
// Another compilation than the one that is generated: the schema as a foreign editor reads it.
const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true, strictRequired: false });
ajv.addVocabulary(ANNOTATIONS);
const validate = ajv.compile(schema);

const keys: [string, SchemaNode, string][] = Object.entries(schema.$defs).flatMap(([def, node]) =>
  Object.entries(node.properties ?? {}).map(([key, property]): [string, SchemaNode, string] => [
    `${def}.${key}`,
    property,
    `${schema.$id}#/$defs/${def}/properties/${key}`,
  ]),
);

describe('every key', () => {
  it('has a title, a description and examples that hold', () => {
    each(keys, ([_, node, pointer]) => {
      expect(node.title).toMatch(/^[^A-Z].*[^.]$|^ISO/);
      expect(node.description).toMatch(/\.$/);
      expect(node.examples?.length).toBeGreaterThan(0);
      const judge = ajv.compile({ $ref: pointer });
      for (const example of node.examples ?? []) {
        expect(judge(example), JSON.stringify(example)).toBe(true);
      }
    });
  });
});

it('is a schema by the published meta-schema of draft 2020-12', () => {
  expect(ajv.validateSchema(schema)).toBe(true);
});

it('constrains nothing across entries and shows nobody a choice of schemas', () => {
  expect(JSON.stringify(schema)).not.toMatch(/"(?:oneOf|anyOf|allOf|not|if)":/);
});

const plan = `
shootplan: 1
title: Tide Glass
use: [our-kit.shootplan.yaml]
deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 2 min }
kit:
  bodies:
    body-a: { sensor: 36 x 24 mm, iso: { lowest: 100, highest: 25600, usable-to: 3200 } }
  lenses:
    long-200: { focal-length: 200 mm, aperture: f/4 to 32, pupil-ratio: 0.8 }
rigs:
  far-off: { parts: [body-a, long-200], support: { foot: 180 mm, overhead: no } }
lights:
  wall: { kind: led, modulation: none, reading: { aperture: f/8, shutter: 1/50 s, iso: 400 } }
subjects:
  lantern: { kind: bubble, diameter: 70 mm, lifetime: 20 s }
shots:
  drift:
    subject: lantern
    rig: far-off
    field: 24 mm
    iso: 1600
    take: { duration: 60 s, count: 3, settle: 8 s }
    preflight: { focus-at-full-size: open, record-read-back: { done: 2027-03-02, by: op } }
    allow: { depth-short: { because: only the rim should be sharp, up-to: 0.6 mm } }
clips:
  drift: [{ file: media/0007.mp4, verdict: keep }]
`;

describe('another editor, where numbers are numbers', () => {
  it('accepts a plan as a general YAML library reads it', () => {
    expect(validate(parse(plan)), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each([
    ['an unknown key', 'diameter: 70 mm', 'diametre: 70 mm'],
    ['a bare number', 'field: 24 mm', 'field: 24'],
    ['a name with capitals', 'rig: far-off', 'rig: Far Off'],
    ['another language version', 'shootplan: 1', 'shootplan: 99'],
    ['no version', 'shootplan: 1\n', ''],
    ['a negative ISO speed', 'iso: 1600', 'iso: -5'],
  ])('refuses %s', (_, right, wrong) => {
    expect(plan).toContain(right);
    expect(validate(parse(plan.replace(right, wrong)))).toBe(false);
  });
});
