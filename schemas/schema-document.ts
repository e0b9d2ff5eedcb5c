/** What a definition says of itself as a kind of entry: something with a name. */
export interface EntryNote {
  /** What it is called in a sentence. */
  readonly noun: string;
  /** Who may refer to it: plans that use its file, its own plan alone, or nobody. */
  readonly scope: 'files' | 'plan' | 'edit';
  /** Kinds of one space share their names; absent: its names are its own. */
  readonly space?: string;
  /** Keys whose values tell it from its neighbours in an outline. */
  readonly outline: readonly string[];
  /** What a new one is called and says, where the plan that people start from has none. */
  readonly first?: { readonly name: string; readonly keys: readonly string[] };
  /** How references call it, where it is held in an entry of another kind. */
  readonly group?: string;
}

/** The parts of JSON Schema that the language's contract is written in. */
export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly pattern?: string;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | SchemaNode;
  readonly propertyNames?: SchemaNode;
  readonly items?: SchemaNode;
  /** Groups whose names the value refers to. */
  readonly 'x-refers'?: readonly string[];
  /** Groups whose names the keys of a map refer to. */
  readonly 'x-names-refer'?: readonly string[];
  /** Words that may stand in place of a record. */
  readonly 'x-words'?: readonly string[];
  readonly 'x-text'?: boolean;
  /** Other words for a key, each answered with the key's own name. */
  readonly 'x-also'?: readonly string[];
  /** Other words for the values of an enum, each with the value that it means. */
  readonly 'x-values-also'?: Readonly<Record<string, string>>;
  readonly 'x-entry'?: EntryNote;
}

export interface SchemaDocument extends SchemaNode {
  readonly $schema: string;
  readonly $id: string;
  readonly $defs: Readonly<Record<string, SchemaNode>>;
}

export const ANNOTATIONS = [
  'x-refers',
  'x-names-refer',
  'x-words',
  'x-text',
  'x-also',
  'x-values-also',
  'x-entry',
];

export const QUANTITY = 'quantity-';
/** The same known only roughly: a range may stand in its place. */
export const ROUGH = 'rough-';

export const target = (node: SchemaNode): string | undefined => node.$ref?.replace('#/$defs/', '');

/** Names of the definitions that are entries or records in them, in the schema's order. */
export const recordNames = (schema: SchemaDocument): string[] =>
  Object.keys(schema.$defs).filter((name) => schema.$defs[name]!.properties !== undefined);
