/** The schema with its `quantity-*` definitions as quantity/ has them. */
import { KINDS, kindOf, type QuantityId } from '../shared/quantity/index.ts';
import { QUANTITY, ROUGH, type SchemaDocument, type SchemaNode } from './schema-document.ts';

/** Beyond this a plain number couldn't be written in a plan either. */
const MOST = 999_999_999;

function typeOf(id: QuantityId): SchemaNode {
  const { bare } = kindOf(id);
  return bare ? { type: [bare, 'string'], exclusiveMinimum: 0, maximum: MOST } : { type: 'string' };
}

function definition(id: QuantityId): SchemaNode {
  const kind = kindOf(id);
  return {
    title: kind.title,
    description:
      kind.units.length > 0 ? `In ${kind.units.join(', ')}.` : `For example ${kind.examples[0]}.`,
    examples: kind.examples,
    ...typeOf(id),
    pattern: kind.pattern,
  };
}

/** A value or a range of it; the value first, since most are one. */
function roughDefinition(id: QuantityId): SchemaNode {
  const { title, rough, pattern } = kindOf(id);
  if (!rough) throw new Error(`${id} has no rough form`);
  return {
    title: `${title}, or a range`,
    description: `Where it is known only roughly, two values or a value and its tolerance.`,
    examples: rough.examples,
    ...typeOf(id),
    pattern: `${pattern}|${rough.pattern}`,
  };
}

/** Ids of the kinds that some key takes as a range. */
function roughIds(schema: SchemaDocument): QuantityId[] {
  const found = new Set<string>();
  for (const node of Object.values(schema.$defs))
    for (const { $ref } of Object.values(node.properties ?? {}))
      if ($ref?.startsWith(`#/$defs/${ROUGH}`)) found.add($ref.slice(`#/$defs/${ROUGH}`.length));
  return [...found].sort() as QuantityId[];
}

export function withQuantities(schema: SchemaDocument): SchemaDocument {
  const entries = Object.entries(schema.$defs).filter(
    ([name]) => !name.startsWith(QUANTITY) && !name.startsWith(ROUGH),
  );
  const quantities = (Object.keys(KINDS) as QuantityId[])
    .sort()
    .map((id) => [QUANTITY + id, definition(id)] as const);
  const rough = roughIds(schema).map((id) => [ROUGH + id, roughDefinition(id)] as const);
  return { ...schema, $defs: Object.fromEntries([...entries, ...quantities, ...rough]) };
}
