declare const refers: unique symbol;

/** The name of another entry, not yet looked up. */
export type Ref = string & { readonly [refers]: true };
