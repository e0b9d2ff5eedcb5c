/** Any node as the field that its shape makes of it, with the problems on the way. */

import type { MapNode, Node, Path, ScalarNode, SeqNode, Span } from '../syntax/tree.ts';
import { inLanguage, later, message } from '../words/message.ts';
import type { Field } from './field.ts';
import { write } from './fixes.ts';
import type { DefName } from './generated/names.ts';
import { SHAPES } from './generated/shapes.ts';
import { distinctPairs } from './instance.ts';
import { lowerScalar, NAME } from './lower-scalar.ts';
import { asName } from './nearest.ts';
import { onSheet } from './on-sheets.ts';
import type { EntryId, FileId, Place } from './place.ts';
import type { ShapeProblem } from './problem.ts';
import type { KeyShape, Shape } from './shape.ts';
import {
  emptyValue,
  type Label,
  labelOf,
  missingKeys,
  notAName,
  notOneOf,
  wrongForm,
} from './shape-problems.ts';
import { unknownKey, withoutColon } from './unknown-key.ts';

/** What is being lowered, and where its problems go. */
export interface Lowering {
  readonly file: FileId;
  readonly entry: EntryId;
  readonly problems: ShapeProblem[];
  /** Where the text can't be read: keys that braces round it lack may stand there. */
  readonly unread?: readonly Span[];
}

type Fields = Record<string, Field<unknown>>;

const FOUND: Readonly<Record<Node['kind'], string>> = {
  scalar: later`a value`,
  map: later`a mapping`,
  seq: later`a list`,
};

const placed = ({ file, entry }: Lowering, path: Path): Place => ({ file, entry, path });

/** Paths of one key of the language, held once: thousands of shots have the same keys. */
const oneStep = new Map<string, Path>();

function keyBelow(path: Path, key: string): Path {
  if (path.length > 0) return [...path, key];
  let kept = oneStep.get(key);
  if (!kept) {
    kept = [key];
    oneStep.set(key, kept);
  }
  return kept;
}

export function lowerNode(
  into: Lowering,
  node: Node | null,
  shape: Shape,
  label: Label,
  path: Path,
): Field<unknown> {
  const at = placed(into, path);
  const invalid = (why: ShapeProblem): Field<unknown> => {
    into.problems.push(why);
    return { state: 'invalid', at };
  };
  if (node === null) return invalid(emptyValue(at, label, shape));
  const otherForm = () => invalid(wrongForm(at, label, shape, inLanguage(FOUND[node.kind])));
  switch (shape.kind) {
    case 'record':
      if (node.kind !== 'map') return otherForm();
      return { state: 'known', value: lowerRecord(into, node, shape.of, path), at };
    case 'word-or-record':
      if (node.kind === 'map') {
        return { state: 'known', value: lowerRecord(into, node, shape.of, path), at };
      }
      if (node.kind === 'seq') return otherForm();
      return shape.words.includes(node.text)
        ? { state: 'known', value: node.text, at }
        : invalid(notOneOf(at, label, shape.words, node.text));
    case 'map':
      if (node.kind !== 'map') return otherForm();
      // Whichever names it has, there may be others where it can't be read.
      if (!isWhole(into, node)) return { state: 'invalid', at };
      return { state: 'known', value: lowerMap(into, node, shape.item, label, path), at };
    case 'list':
      if (node.kind === 'seq') {
        // Where an item can't be read, those that can are not all that there are.
        if (hasUnreadItem(into, node)) return { state: 'invalid', at };
        return { state: 'known', value: lowerList(into, node, shape.item, label, path), at };
      }
      return node.kind === 'scalar' ? invalid(bareItem(node, shape, label, at)) : otherForm();
    default:
      if (node.kind !== 'scalar') return otherForm();
      return lowerScalar(node.text, shape, label, at, into.problems);
  }
}

/** One item where a list belongs: as a list of one, where it is plain enough to be written so. */
function bareItem(node: ScalarNode, shape: Shape, label: Label, at: Place): ShapeProblem {
  const fixes = NAME.test(node.text) ? [write(at, `[${node.text}]`)] : [];
  return wrongForm(at, label, shape, message`a value`, fixes);
}

function lowerList(
  into: Lowering,
  node: SeqNode,
  item: Shape,
  label: Label,
  path: Path,
): readonly Field<unknown>[] {
  const one = { ...label, examples: [] };
  return node.items.map((value, index) => lowerNode(into, value, item, one, [...path, index]));
}

function lowerMap(
  into: Lowering,
  node: MapNode,
  item: Shape,
  label: Label,
  path: Path,
): ReadonlyMap<string, Field<unknown>> {
  const fields = new Map<string, Field<unknown>>();
  for (const { key, value } of distinctPairs(node)) {
    const name = key.text;
    if (!NAME.test(name)) {
      const at: Place = { ...placed(into, [...path, name]), part: 'key' };
      into.problems.push(notAName(at, label, name, asName(name)));
    }
    const named = { key: name, title: label.title, examples: [] };
    fields.set(name, lowerNode(into, value, item, named, [...path, name]));
  }
  return fields;
}

/** Block lines are read one by one; in braces nothing is sure behind what can't be read. */
const isWhole = ({ unread = [] }: Lowering, { flow, span }: MapNode): boolean =>
  !flow || !unread.some(({ start, end }) => span.start <= start && end <= span.end);

/**
 * A bracket that is not closed is at the list's own start: its items can be read. Items on lines of
 * their own are read one by one; of those between the marks of a merge only the dash is.
 */
const hasUnreadItem = ({ unread = [] }: Lowering, { flow, span, items }: SeqNode): boolean =>
  flow
    ? unread.some(({ start, end }) => span.start < start && end <= span.end)
    : items.includes(null) && unread.some(({ start, end }) => start < span.end && span.start < end);

/** What every record of a definition has in common, drawn together once. */
interface Pattern {
  readonly keys: readonly (readonly [name: string, shape: KeyShape])[];
  /** Room for all its fields: growing by one at a time costs more than the reading. */
  readonly blank: Fields;
}

const patterns = new Map<DefName, Pattern>();

function patternOf(def: DefName): Pattern {
  let pattern = patterns.get(def);
  if (!pattern) {
    const keys = Object.entries(SHAPES[def].keys);
    const blank = Object.fromEntries(keys.map(([name]) => [name, undefined]));
    pattern = { keys, blank: blank as unknown as Fields };
    patterns.set(def, pattern);
  }
  return pattern;
}

function lowerRecord(into: Lowering, node: MapNode, def: DefName, path: Path): Fields {
  const { keys, title } = SHAPES[def];
  const pairs = distinctPairs(node);
  const pattern = patternOf(def);
  const misspelt = new Set<string>();
  let taken: Set<string> | undefined;
  const fields: Fields = { ...pattern.blank };
  for (const { key, value } of pairs) {
    const name = key.text;
    const shape = Object.hasOwn(keys, name) ? keys[name] : undefined;
    if (shape) {
      const below = keyBelow(path, name);
      const before = into.problems.length;
      fields[name] = lowerNode(into, value, shape.shape, labelOf(name, shape), below);
      if (fields[name].state === 'invalid' && value?.kind === 'scalar') {
        const sheet = onSheet(def, name, value.text, placed(into, below), (key) =>
          pairs.some((pair) => pair.key.text === key),
        );
        if (sheet) {
          into.problems.splice(before, Number.POSITIVE_INFINITY, sheet.problem);
          if (sheet.counts !== undefined)
            fields[name] = lowerNode(
              into,
              { ...value, text: sheet.counts },
              shape.shape,
              labelOf(name, shape),
              below,
            );
        }
      }
    } else {
      taken ??= new Set(pairs.map((pair) => pair.key.text));
      const at = placed(into, [...path, name]);
      const found =
        (value === null && withoutColon(def, name, at, taken)) ||
        unknownKey(
          def,
          name,
          at,
          taken,
          value,
          (other) => pairs.find((pair) => pair.key.text === other)?.value,
        );
      into.problems.push(found.problem);
      if (found.meant === undefined) continue;
      misspelt.add(found.meant);
      taken.add(found.meant);
      const own = keys[found.meant];
      if (found.counts && own && value !== null) {
        const below = keyBelow(path, name);
        fields[found.meant] = lowerNode(into, value, own.shape, labelOf(found.meant, own), below);
      }
    }
  }
  const whole = isWhole(into, node);
  const lacking: [string, KeyShape][] = [];
  for (const [name, shape] of pattern.keys) {
    if (fields[name]) continue;
    const at = placed(into, keyBelow(path, name));
    // What stands there misspelt or unread has its problem already and isn't missing.
    const isMissing = whole && !misspelt.has(name);
    fields[name] = { state: isMissing ? 'missing' : 'invalid', at };
    if (shape.required && isMissing) lacking.push([name, shape]);
  }
  if (lacking.length > 0) {
    into.problems.push(missingKeys(placed(into, [...path, lacking[0]![0]]), title, lacking));
  }
  return fields;
}

/** Every field of a record that can't be read at all. */
export function invalidFields(into: Lowering, def: DefName, path: Path): Fields {
  return Object.fromEntries(
    Object.keys(SHAPES[def].keys).map((name) => [
      name,
      { state: 'invalid', at: placed(into, [...path, name]) },
    ]),
  );
}
