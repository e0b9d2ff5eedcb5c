/** The grammar with the schema's keys of the second level, which are no names of entries. */
import { type SchemaDocument, type SchemaNode, target } from './schema-document.ts';

/** Between these stands the list, in a negative look-ahead. */
const LIST = /(?<=\(\?!\(\?:)[a-z|-]+(?=\):\))/;

/** Keys of the kit and of the edit whose value is a mapping: those that a line of their own begins. */
function groupsIn(schema: SchemaDocument): readonly string[] {
  const isMapping = (node: SchemaNode): boolean =>
    typeof node.additionalProperties === 'object' ||
    schema.$defs[target(node) ?? '']?.properties !== undefined;
  return ['kit', 'edit'].flatMap((section) =>
    Object.entries(schema.$defs[section]?.properties ?? {})
      .filter(([, node]) => isMapping(node))
      .map(([key]) => key),
  );
}

export function withGroups(grammar: string, schema: SchemaDocument): string {
  if (!LIST.test(grammar)) throw new Error('the grammar has no list of groups');
  return grammar.replace(LIST, groupsIn(schema).join('|'));
}
