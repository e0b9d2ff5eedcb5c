/** TypeScript for the typed plan: one interface per definition, every field a `Field`. */
import type { KeyShape, RecordShape, Shape } from '../shared/plan/shape.ts';
import type { EntryRow } from './entry-table.ts';

export const typeName = (def: string): string =>
  def.replace(/(?:^|-)([a-z])/g, (_, letter: string) => letter.toUpperCase());

const union = (words: readonly string[]): string => words.map((word) => `'${word}'`).join(' | ');

function typeOf(shape: Shape): string {
  switch (shape.kind) {
    case 'quantity':
      return `QuantityValue<'${shape.of}'>`;
    case 'enum':
      return union(shape.values);
    case 'ref':
      return 'Ref';
    case 'name':
    case 'text':
      return 'string';
    case 'yes-no':
      return 'boolean';
    case 'record':
      return typeName(shape.of);
    case 'word-or-record':
      return `${union(shape.words)} | ${typeName(shape.of)}`;
    case 'list':
      return `readonly Field<${typeOf(shape.item)}>[]`;
    case 'map':
      return `ReadonlyMap<string, Field<${typeOf(shape.item)}>>`;
  }
}

const quotedKey = (key: string): string => (/^[a-z]+$/.test(key) ? key : `'${key}'`);

function fieldLine(key: string, { shape, description }: KeyShape): string {
  return `  /** ${description} */\n  readonly ${quotedKey(key)}: Field<${typeOf(shape)}>;\n`;
}

export function emitTypes(
  table: Readonly<Record<string, RecordShape>>,
  entries: ReadonlyMap<string, EntryRow>,
): string {
  const interfaces = Object.entries(table).map(([def, record]) => {
    const fields = Object.entries(record.keys).map(([key, shape]) => fieldLine(key, shape));
    return `/** ${record.description} */\nexport interface ${typeName(def)} {\n${fields.join('')}}\n`;
  });
  const map = Object.keys(table).map((def) => `  readonly ${quotedKey(def)}: ${typeName(def)};\n`);
  const groups = [...entries].flatMap(([group, { def, home, scope }]) =>
    home !== null && scope !== 'edit'
      ? [`  readonly ${quotedKey(group)}: ${typeName(def)};\n`]
      : [],
  );
  return [
    `import type { QuantityValue } from '../../quantity/index.ts';\n`,
    `import type { Field } from '../field.ts';\n`,
    `import type { Ref } from '../ref.ts';\n\n`,
    interfaces.join('\n'),
    `\n/** The type of each definition. */\nexport interface TypesOf {\n${map.join('')}}\n`,
    `\n/** What each group holds whose entries are found by name. */\nexport interface GroupTypes {\n${groups.join('')}}\n`,
  ].join('');
}

const alternatives = (names: readonly string[]): string =>
  `\n  | ${names.map((name) => `'${name}'`).join('\n  | ')}`;

/** Names alone, so that whatever the tables are made of can say them. */
export function emitNames(
  table: Readonly<Record<string, RecordShape>>,
  entries: ReadonlyMap<string, EntryRow>,
): string {
  const rows = [...entries];
  const groups = (which: (row: EntryRow) => boolean): string =>
    alternatives(rows.filter(([, row]) => which(row)).map(([group]) => group));
  const spaces = [...new Set(rows.map(([, { space }]) => space))].map(
    (space) =>
      `  readonly ${quotedKey(space)}: ${union(rows.filter(([, row]) => row.space === space).map(([group]) => group))};\n`,
  );
  return [
    `export type DefName =${alternatives(Object.keys(table))};\n\n`,
    `/** Whatever has a name in a plan. */\nexport type AnyGroup =${groups(() => true)};\n\n`,
    `/** Where a name is looked up. */\nexport type Group =${groups(({ scope }) => scope !== 'edit')};\n\n`,
    `/** Groups of entries, and not of parts of one. */\nexport type GroupName =${groups(({ home, scope }) => home !== null && scope !== 'edit')};\n\n`,
    `/** The groups that share their names. */\nexport interface Spaces {\n${spaces.join('')}}\n`,
  ].join('');
}

export const emitShapes = (table: Readonly<Record<string, RecordShape>>): string =>
  [
    `import type { RecordShape } from '../shape.ts';\n`,
    `import type { DefName } from './names.ts';\n\n`,
    `export const SHAPES: Readonly<Record<DefName, RecordShape>> = ${JSON.stringify(table, null, 1)};\n`,
  ].join('');

export const emitEntries = (entries: ReadonlyMap<string, EntryRow>): string =>
  [
    `import type { EntryShape } from '../shape.ts';\n`,
    `import type { AnyGroup } from './names.ts';\n\n`,
    `export const ENTRIES: Readonly<Record<AnyGroup, EntryShape>> = ${JSON.stringify(Object.fromEntries(entries), null, 1)};\n`,
  ].join('');
