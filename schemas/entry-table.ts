/**
 * The kinds of entries as the table that shared/plan/ reads: what each definition's `x-entry` says,
 * with the place where entries of it are held, which follows from the maps that hold them.
 */
import type { EntryShape } from '../shared/plan/shape.ts';
import {
  type EntryNote,
  recordNames,
  type SchemaDocument,
  type SchemaNode,
  target,
} from './schema-document.ts';

/** Built before the generated names exist, so that names are plain strings here. */
export interface EntryRow extends Omit<EntryShape, 'def' | 'space'> {
  readonly def: string;
  readonly space: string;
}

/** The definition that a map holds by name: alone, or in lists. */
const heldBy = ({ additionalProperties: held }: SchemaNode): string | undefined =>
  typeof held === 'object' ? (target(held) ?? (held.items && target(held.items))) : undefined;

/** Where entries of each definition are held: keys of the plan, and of its sections that hold groups. */
function homesIn(schema: SchemaDocument): ReadonlyMap<string, string> {
  const homes = new Map<string, string>();
  const sections = { ...schema.$defs.plan!.properties };
  for (const [section, node] of Object.entries(sections)) {
    const inner = schema.$defs[target(node) ?? '']?.properties ?? {};
    for (const [key, map] of [[section, node] as const, ...Object.entries(inner)]) {
      const def = heldBy(map);
      const home = map === node ? section : `${section}/${key}`;
      if (def !== undefined && entryNote(schema, def)) homes.set(def, home);
    }
  }
  return homes;
}

const entryNote = (schema: SchemaDocument, def: string): EntryNote | undefined =>
  schema.$defs[def]?.['x-entry'];

/** In the order of the schema, by group. */
export function entryTable(schema: SchemaDocument): ReadonlyMap<string, EntryRow> {
  const homes = homesIn(schema);
  const rows = recordNames(schema).flatMap((def): [string, EntryRow][] => {
    const note = entryNote(schema, def);
    if (!note) return [];
    const { noun, scope, space, outline, first = null, group: named } = note;
    const home = homes.get(def) ?? null;
    const group = home?.split('/').at(-1) ?? named;
    if (group === undefined) throw new Error(`nothing holds entries of ${def}`);
    const keys = schema.$defs[def]?.properties ?? {};
    for (const key of [...outline, ...(first?.keys ?? [])])
      if (!(key in keys)) throw new Error(`${def} has no key ${key}`);
    return [[group, { def, home, noun, scope, space: space ?? group, outline, first }]];
  });
  const table = new Map(rows);
  for (const held of [...Object.values(schema.$defs.kit?.properties ?? {})]) {
    const def = heldBy(held);
    if (def === undefined || !homes.has(def)) throw new Error(`${def} of the kit has no x-entry`);
  }
  return table;
}
