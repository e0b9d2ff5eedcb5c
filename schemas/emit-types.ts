/** TypeScript for the typed plan: one interface per definition, every field a `Field`. */
import type { KeyShape, RecordShape, Shape } from '../shared/plan/shape.ts';

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

export function emitTypes(table: Readonly<Record<string, RecordShape>>): string {
  const interfaces = Object.entries(table).map(([def, record]) => {
    const fields = Object.entries(record.keys).map(([key, shape]) => fieldLine(key, shape));
    return `/** ${record.description} */\nexport interface ${typeName(def)} {\n${fields.join('')}}\n`;
  });
  const map = Object.keys(table).map((def) => `  readonly ${quotedKey(def)}: ${typeName(def)};\n`);
  return [
    `import type { QuantityValue } from '../../quantity/index.ts';\n`,
    `import type { Field } from '../field.ts';\n`,
    `import type { Ref } from '../ref.ts';\n\n`,
    interfaces.join('\n'),
    `\n/** The type of each definition. */\nexport interface TypesOf {\n${map.join('')}}\n`,
  ].join('');
}

export function emitShapes(table: Readonly<Record<string, RecordShape>>): string {
  const names = Object.keys(table).map((def) => `'${def}'`);
  return [
    `import type { RecordShape } from '../shape.ts';\n\n`,
    `export type DefName =\n  | ${names.join('\n  | ')};\n\n`,
    `export const SHAPES: Readonly<Record<DefName, RecordShape>> = ${JSON.stringify(table, null, 1)};\n`,
  ].join('');
}
