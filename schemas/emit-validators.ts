/**
 * One validator per definition as standalone code: nothing is compiled at run time, so that it
 * works where eval is forbidden.
 */
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import { typeName } from './emit-types.ts';
import { ANNOTATIONS, recordNames, type SchemaDocument } from './schema-document.ts';

const exported = (def: string): string => `validate${typeName(def)}`;

const idOf = (def: string): string => `lamella:${def}`;

/**
 * A definition as a schema of its own, so that ajv writes one function for it and not one for
 * every place that it is referred from; and without what is only for people, which would be
 * carried into the code.
 */
function standingAlone(def: string, schema: SchemaDocument): Record<string, unknown> {
  const forPeople = new Set(['title', 'description', 'examples', ...ANNOTATIONS]);
  const strip = (value: unknown, keysAreNames: boolean): unknown => {
    if (Array.isArray(value) || typeof value !== 'object' || value === null) return value;
    const kept = Object.entries(value).filter(([key]) => keysAreNames || !forPeople.has(key));
    return Object.fromEntries(
      kept.map(([key, inner]): [string, unknown] =>
        key === '$ref' && !keysAreNames
          ? [key, idOf(String(inner).replace('#/$defs/', ''))]
          : [key, strip(inner, key === 'properties' && !keysAreNames)],
      ),
    );
  };
  return { ...(strip(schema.$defs[def], false) as object), $id: idOf(def) };
}

function ajvFor(schema: SchemaDocument): Ajv2020 {
  const ajv = new Ajv2020({
    allErrors: true,
    messages: false,
    allowUnionTypes: true,
    strictSchema: true,
    strictTypes: true,
    inlineRefs: false,
    code: { source: true, esm: true, lines: false },
  });
  for (const def of Object.keys(schema.$defs)) ajv.addSchema(standingAlone(def, schema));
  return ajv;
}

/** Patterns are long and stand in a validator three times: each is written once. */
function withoutDoubles(code: string, schema: SchemaDocument): string {
  const literals = new Set<string>();
  const gather = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value))
      if (key === 'pattern' && typeof inner === 'string') literals.add(JSON.stringify(inner));
      else gather(inner);
  };
  gather(schema.$defs);
  const declared: string[] = [];
  let body = code;
  for (const literal of literals) {
    const parts = body.split(literal);
    if (parts.length < 3) continue;
    const name = `text${declared.length}`;
    declared.push(`const ${name}=${literal};`);
    body = parts.join(name);
  }
  return body.replace('"use strict";', () => `"use strict";${declared.join('')}`);
}

export function emitValidators(schema: SchemaDocument): string {
  const ajv = ajvFor(schema);
  const names = recordNames(schema);
  const refs = names.map((def) => [exported(def), idOf(def)]);
  // CommonJS interop hands the function over as itself or as `default`.
  const write = ((standalone as { default?: unknown }).default ?? standalone) as (
    ajv: Ajv2020,
    refs: Record<string, string>,
  ) => string;
  const code = write(ajv, Object.fromEntries(refs));
  if (/\brequire\(/.test(code)) throw new Error('a validator asks for a module at run time');
  const table = names.map((def) => `  '${def}': ${exported(def)},\n`).join('');
  return `${withoutDoubles(code, schema)}\nexport const VALIDATORS = {\n${table}};\n`;
}

export const VALIDATORS_TYPES = `import type { DefName } from './names.ts';

export interface SchemaError {
  /** JSON pointer to what is at fault. */
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
}

export interface Validate {
  (instance: unknown): boolean;
  /** Of the last call; null where it was valid. */
  errors?: readonly SchemaError[] | null;
}

export const VALIDATORS: Readonly<Record<DefName, Validate>>;
`;
