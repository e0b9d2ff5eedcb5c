import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { GRAMMAR_PATH, outputs, SCHEMA_PATH } from '../../schemas/outputs.ts';
import { each } from '../support/each.ts';

const root = path.resolve(import.meta.dirname, '../..');
const read = (name: string): string => readFileSync(path.join(root, name), 'utf8');

it('every generated file is what the schema and quantity/ give', () => {
  each([...outputs(read(SCHEMA_PATH), read(GRAMMAR_PATH))], ([name, text]) => {
    // A mismatch of whole files would print both.
    expect(read(name) === text, `stale: run node schemas/generate.mjs`).toBe(true);
  });
});
