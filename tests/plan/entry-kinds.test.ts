/** Kinds of entries come from the schema: each of the kit says what it is, and nothing else lists them. */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { entryTable } from '../../schemas/entry-table.ts';
import { withGroups } from '../../schemas/grammar.ts';
import type { EntryNote, SchemaDocument, SchemaNode } from '../../schemas/schema-document.ts';
import { idOf, isOf, nameOf } from '../../shared/plan/entry-id.ts';
import { ENTRIES } from '../../shared/plan/generated/entries.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { entryKindOf, HOMES, SHARED_SPACES } from '../../shared/workspace/entry-kinds.ts';
import { entryId } from '../support/entry-id.ts';

const text = readFileSync(new URL('../../schemas/shootplan.schema.json', import.meta.url), 'utf8');
const schema = (): SchemaDocument => JSON.parse(text) as SchemaDocument;

/** The schema with another kind of kit. */
function withMotors(entry: EntryNote | null): SchemaDocument {
  const { $defs, ...rest } = schema();
  const motors: SchemaNode = {
    type: 'object',
    additionalProperties: { $ref: '#/$defs/motor' },
  };
  const motor: SchemaNode = {
    properties: { speed: { $ref: '#/$defs/quantity-turn' } },
    ...(entry && { 'x-entry': entry }),
  };
  const kit = { ...$defs.kit, properties: { ...$defs.kit?.properties, motors } };
  return { ...rest, $defs: { ...$defs, kit, motor } };
}

describe('a kind of entry', () => {
  it.each(Object.entries(ENTRIES))('%s has its place, and keys that it has', (group, entry) => {
    const { def, home, outline, first } = entry;
    const keys = Object.keys(SHAPES[def].keys);
    expect(keys).toEqual(expect.arrayContaining([...outline, ...(first?.keys ?? [])]));
    if (home === null) return;
    expect(HOMES[home]).toEqual({ group, def });
    expect(entryKindOf(entryId(home))).toEqual({ kind: 'container' });
    expect(entryKindOf(entryId(`${home}/a`)).kind).toBe(group === 'clips' ? 'clips' : 'entry');
  });

  it('of the kit is not forgotten', () => {
    expect(() => entryTable(withMotors(null))).toThrow('motor of the kit has no x-entry');
    const note: EntryNote = { noun: 'motor', scope: 'files', outline: ['speed'] };
    expect(entryTable(withMotors(note)).get('motors')).toEqual({
      def: 'motor',
      home: 'kit/motors',
      noun: 'motor',
      scope: 'files',
      space: 'motors',
      outline: ['speed'],
      first: null,
    });
    expect(() => entryTable(withMotors({ ...note, outline: ['sped'] }))).toThrow('no key sped');
  });

  it('is coloured as a group, and not as the name of an entry', () => {
    const before = '(?<=^  )(?!(?:bodies|music):)[a-z]';
    expect(withGroups(before, withMotors(null))).toMatch(/\(\?:bodies\|.*\|motors\|music\|cuts\):/);
    expect(() => withGroups('', schema())).toThrow('no list');
  });

  it('shares its names with those that stand beside it in a rig', () => {
    expect(SHARED_SPACES).toContainEqual([
      'bodies',
      'lenses',
      'tubes',
      'converters',
      'close-up-lenses',
    ]);
    expect(SHARED_SPACES.flat()).not.toContain('shots');
    expect(new Set(SHARED_SPACES.flat()).size).toBe(SHARED_SPACES.flat().length);
  });
});

describe('the id of an entry', () => {
  it('is made of its group and name, and taken apart again', () => {
    expect(idOf('close-up-lenses', 'plus-2')).toBe('kit/close-up-lenses/plus-2');
    expect(nameOf('close-up-lenses', entryId('kit/close-up-lenses/plus-2'))).toBe('plus-2');
    expect(isOf('shots', entryId('shots/drift'))).toBe(true);
    expect(isOf('shots', entryId('shots'))).toBe(false);
    expect(isOf('shots', entryId('shotsx/drift'))).toBe(false);
  });
});
