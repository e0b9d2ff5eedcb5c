/** The names in an entry that refer to others, found by the shape of the language. */
import { type Field, isKnown } from './field.ts';
import type { DefName, Group } from './generated/names.ts';
import { SHAPES } from './generated/shapes.ts';
import type { Place } from './place.ts';
import type { Shape } from './shape.ts';

export interface Reference {
  readonly name: string;
  readonly groups: readonly Group[];
  /** Where the name stands; its key where it is one. */
  readonly at: Place;
}

type Referring = readonly (readonly [key: string, shape: Shape])[];

const referring = new Map<DefName, Referring>();

/** The keys of a record below which names can stand: few of many. */
function referringKeys(def: DefName): Referring {
  let keys = referring.get(def);
  if (!keys) {
    keys = Object.entries(SHAPES[def].keys).flatMap(([key, { shape }]) =>
      refers(shape) ? [[key, shape] as const] : [],
    );
    referring.set(def, keys);
  }
  return keys;
}

function refers(shape: Shape): boolean {
  switch (shape.kind) {
    case 'ref':
      return true;
    case 'record':
    case 'word-or-record':
      return referringKeys(shape.of).length > 0;
    case 'list':
      return refers(shape.item);
    case 'map':
      return shape.names !== undefined || refers(shape.item);
    default:
      return false;
  }
}

/** All references of a record, in the order of the schema's keys. */
export function referencesIn(def: DefName, fields: unknown): Reference[] {
  const found: Reference[] = [];
  for (const [key, shape] of referringKeys(def)) {
    const field = (fields as Record<string, Field<unknown>>)[key];
    if (field) walk(field, shape, found);
  }
  return found;
}

/** The references in one field of a given shape. */
export function referencesAt(field: Field<unknown>, shape: Shape): Reference[] {
  const found: Reference[] = [];
  walk(field, shape, found);
  return found;
}

function walk(field: Field<unknown>, shape: Shape, found: Reference[]): void {
  if (!isKnown(field)) return;
  switch (shape.kind) {
    case 'ref':
      found.push({ name: String(field.value), groups: shape.groups, at: field.at });
      return;
    case 'record':
      found.push(...referencesIn(shape.of, field.value));
      return;
    case 'word-or-record':
      if (typeof field.value === 'object') found.push(...referencesIn(shape.of, field.value));
      return;
    case 'list':
      for (const item of field.value as readonly Field<unknown>[]) walk(item, shape.item, found);
      return;
    case 'map':
      for (const [name, item] of field.value as ReadonlyMap<string, Field<unknown>>) {
        if (shape.names) found.push({ name, groups: shape.names, at: { ...item.at, part: 'key' } });
        walk(item, shape.item, found);
      }
  }
}
