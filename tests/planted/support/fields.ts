/** What stands where in a plan, read by `yaml` (npm), apart from the code under test. */
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';

export interface PlanField {
  /** Keys from the top: `shots`, `edge`, `field`; items of a list by their index. */
  readonly path: readonly string[];
  /** UTF-16 offsets of the key; undefined for an item of a list. */
  readonly key?: readonly [start: number, end: number];
  readonly value: readonly [start: number, end: number];
  /** A scalar's text; undefined for a mapping or a list. */
  readonly text?: string;
  /** Inside braces or brackets. */
  readonly flow: boolean;
}

export function fieldsOf(plan: string): readonly PlanField[] {
  const fields: PlanField[] = [];
  const walk = (node: unknown, path: readonly string[], flow: boolean) => {
    const within = flow || ((isMap(node) || isSeq(node)) && node.flow === true);
    const add = (value: unknown, name: string, key?: Node) => {
      const at = [...path, name];
      const range = (value as Node | null)?.range;
      if (!range) return;
      fields.push({
        path: at,
        ...(key?.range && { key: [key.range[0], key.range[1]] as const }),
        value: [range[0], range[1]],
        ...(isScalar(value) && { text: plan.slice(range[0], range[1]) }),
        flow: within,
      });
      walk(value, at, within);
    };
    if (isMap(node)) for (const { key, value } of node.items) add(value, String(key), key as Node);
    if (isSeq(node)) for (const [index, item] of node.items.entries()) add(item, String(index));
  };
  walk(parseDocument(plan).contents, [], false);
  return fields;
}

/** Names that a shot's figures follow from: its own, and whatever its entries name in turn. */
export function namesBehind(fields: readonly PlanField[], shot: string): ReadonlySet<string> {
  const named = (prefix: string) =>
    fields.flatMap(({ path, text }) =>
      text !== undefined && path.join('/').startsWith(prefix) ? [text] : [],
    );
  const own = named(`shots/${shot}/`);
  const rigs = own.flatMap((name) => named(`rigs/${name}/`));
  return new Set([shot, ...own, ...rigs]);
}

/** The name of the entry that a field stands in; undefined for the plan's own keys. */
export function entryOf({ path }: Pick<PlanField, 'path'>): string | undefined {
  if (path[0] === 'kit') return path[2];
  return ['rigs', 'lights', 'subjects', 'shots'].includes(path[0] ?? '') ? path[1] : undefined;
}
