/** The schema's definitions as the table that shared/plan/ reads. */
import type { KeyShape, RecordShape, Shape } from '../shared/plan/shape.ts';
import {
  QUANTITY,
  ROUGH,
  recordNames,
  type SchemaDocument,
  type SchemaNode,
  target,
} from './schema-document.ts';

/** Built before the generated types exist, so that names are plain strings here. */
type Loose<T> = T extends { kind: string } ? Omit<T, 'of' | 'groups' | 'names'> & object : T;

export function shapeOf(schema: SchemaDocument, node: SchemaNode): Shape {
  const loose = (shape: Loose<Shape> & Record<string, unknown>): Shape => shape as unknown as Shape;
  const name = target(node);
  if (name === 'name') {
    const groups = node['x-refers'];
    return loose(groups ? { kind: 'ref', groups } : { kind: 'name' });
  }
  if (name === 'text' || name === 'yes-no') return { kind: name };
  if (name?.startsWith(QUANTITY))
    return loose({ kind: 'quantity', of: name.slice(QUANTITY.length) });
  if (name?.startsWith(ROUGH))
    return loose({ kind: 'quantity', of: name.slice(ROUGH.length), rough: true });
  if (name !== undefined) {
    const words = schema.$defs[name]?.['x-words'];
    if (!schema.$defs[name]?.properties) throw new Error(`no definition of a record: ${name}`);
    return loose(
      words ? { kind: 'word-or-record', words, of: name } : { kind: 'record', of: name },
    );
  }
  if (node.enum) {
    const also = node['x-values-also'];
    const values = [...new Set(node.enum.map(String))];
    return { kind: 'enum', values, ...(also && { also }) };
  }
  if (node.items) return { kind: 'list', item: shapeOf(schema, node.items) };
  if (typeof node.additionalProperties === 'object') {
    const names = node['x-names-refer'];
    const item = shapeOf(schema, node.additionalProperties);
    return loose({ kind: 'map', item, ...(names ? { names } : {}) });
  }
  throw new Error(`no shape for ${JSON.stringify(node)}`);
}

/** A value as YAML on one line. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const pairs = Object.entries(value).map(([key, inner]) => `${key}: ${flowText(inner)}`);
    return `{ ${pairs.join(', ')} }`;
  }
  return String(value);
}

export function shapeTable(schema: SchemaDocument): Record<string, RecordShape> {
  const table: Record<string, RecordShape> = {};
  for (const name of recordNames(schema)) {
    const { title = '', description = '', properties = {}, required = [] } = schema.$defs[name]!;
    const keys = Object.entries(properties).map(([key, node]): [string, KeyShape] => [
      key,
      {
        shape: shapeOf(schema, node),
        required: required.includes(key),
        title: node.title ?? '',
        description: node.description ?? '',
        examples: (node.examples ?? []).map(flowText),
        ...(node['x-also'] && { also: node['x-also'] }),
      },
    ]);
    table[name] = { title, description, keys: Object.fromEntries(keys) };
  }
  return table;
}
