/** The schema with its `quantity-*` definitions as quantity/ has them. */
import { KINDS, kindOf, type QuantityId } from '../shared/quantity/index.ts';
import { QUANTITY, type SchemaDocument, type SchemaNode } from './schema-document.ts';

/** Beyond this a plain number couldn't be written in a plan either. */
const MOST = 999_999_999;

function definition(id: QuantityId): SchemaNode {
  const kind = kindOf(id);
  const bare = kind.bare
    ? { type: [kind.bare, 'string'], exclusiveMinimum: 0, maximum: MOST }
    : { type: 'string' };
  return {
    title: kind.title,
    description:
      kind.units.length > 0 ? `In ${kind.units.join(', ')}.` : `For example ${kind.examples[0]}.`,
    examples: kind.examples,
    ...bare,
    pattern: kind.pattern,
  };
}

export function withQuantities(schema: SchemaDocument): SchemaDocument {
  const entries = Object.entries(schema.$defs).filter(([name]) => !name.startsWith(QUANTITY));
  const quantities = (Object.keys(KINDS) as QuantityId[])
    .sort()
    .map((id) => [QUANTITY + id, definition(id)] as const);
  return { ...schema, $defs: Object.fromEntries([...entries, ...quantities]) };
}
