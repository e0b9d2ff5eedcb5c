/**
 * One entry's tree to its typed fields, and the problems of its shape. Values are read from the
 * text as it was written; the generated validators judge the whole, and what they refuse is
 * always said in words of our own.
 */

import type { Node, Path, Span } from '../syntax/tree.ts';
import { keyOfEntry, plainId } from './entry-id.ts';
import type { Field } from './field.ts';
import type { DefName } from './generated/names.ts';
import { SHAPES } from './generated/shapes.ts';
import type { TypesOf } from './generated/types.ts';
import { type SchemaError, VALIDATORS } from './generated/validators.js';
import { toInstance } from './instance.ts';
import { invalidFields, type Lowering, lowerNode } from './lower-node.ts';
import type { EntryId, FileId } from './place.ts';
import type { ShapeProblem } from './problem.ts';
import type { Shape } from './shape.ts';
import { isError, type Label, labelOf, notAllowed } from './shape-problems.ts';

interface LoweredFrom {
  readonly file: FileId;
  readonly entry: EntryId;
  /** Keys from the entry down to the node, where it isn't the entry's own value. */
  readonly path?: Path;
  /** Where the text of the node can't be read. */
  readonly unread?: readonly Span[];
}

interface LoweredEntry<D extends DefName> {
  readonly fields: TypesOf[D];
  readonly problems: readonly ShapeProblem[];
}

interface LoweredField<F> {
  readonly field: F;
  readonly problems: readonly ShapeProblem[];
}

/** The last key of a place: an entry's name, as written where it is one of several of that name. */
const nameAt = ({ entry, path = [] }: LoweredFrom): string =>
  String(path.at(-1) ?? keyOfEntry(plainId(entry)));

const lowering = ({ file, entry, unread = [] }: LoweredFrom): Lowering => ({
  file,
  entry,
  problems: [],
  unread,
});

const examples = new Map<DefName, readonly string[]>();

/** What an entry might begin with: its first required key, else the first that says something. */
function examplesOf(def: DefName): readonly string[] {
  let kept = examples.get(def);
  if (!kept) {
    const telling = Object.entries(SHAPES[def].keys).filter(([key]) => key !== 'about');
    const needed = telling.filter(([, { required }]) => required);
    const first = (needed.length > 0 ? needed : telling).slice(0, 1);
    kept = first.map(([key, shape]) => `${key}: ${shape.examples[0]}`);
    examples.set(def, kept);
  }
  return kept;
}

/** An entry, or any record. Where it can't be read at all, each of its fields is invalid. */
export function lowerEntry<D extends DefName>(
  def: D,
  node: Node | null,
  from: LoweredFrom,
): LoweredEntry<D> {
  const shape: Shape = { kind: 'record', of: def };
  const label = { key: nameAt(from), title: SHAPES[def].title, examples: examplesOf(def) };
  const into = lowering(from);
  const path = from.path ?? [];
  const field = lowerNode(into, node, shape, label, path);
  judge(into, def, toInstance(node, shape), label, path);
  const fields = field.state === 'known' ? field.value : invalidFields(into, def, path);
  return { fields: fields as TypesOf[D], problems: into.problems };
}

/**
 * The value of one key standing on its own: `lowerKey('plan', 'mains', …)`, `lowerKey('edit',
 * 'music', …)`.
 */
export function lowerKey<D extends DefName, K extends keyof TypesOf[D] & string>(
  def: D,
  key: K,
  node: Node | null,
  from: LoweredFrom,
): LoweredField<TypesOf[D][K]> {
  const keyShape = SHAPES[def].keys[key]!;
  const into = lowering(from);
  const label = labelOf(key, keyShape);
  const path = from.path ?? [];
  const field = lowerNode(into, node, keyShape.shape, label, path);
  judge(into, def, { [key]: toInstance(node, keyShape.shape) }, label, path, [key]);
  return { field: field as TypesOf[D][K], problems: into.problems };
}

/** The clips of one shot: an entry of `clips`. */
export function lowerClips(
  node: Node | null,
  from: LoweredFrom,
): LoweredField<Field<readonly Field<TypesOf['clip']>[]>> {
  const keyShape = SHAPES.plan.keys.clips!;
  if (keyShape.shape.kind !== 'map') throw new Error('clips are by name');
  const into = lowering(from);
  const label: Label = { key: nameAt(from), title: keyShape.title, examples: [] };
  const path = from.path ?? [];
  const field = lowerNode(into, node, keyShape.shape.item, label, path);
  const instance = { clips: { shot: toInstance(node, keyShape.shape.item) } };
  judge(into, 'plan', instance, label, path, ['clips', 'shot']);
  return {
    field: field as Field<readonly Field<TypesOf['clip']>[]>,
    problems: into.problems,
  };
}

/**
 * The schema's word is the last: where it refuses what was found in order, that is a problem too,
 * so that other editors and this one never differ in silence. `above`: keys of the instance that
 * lead to the node.
 */
function judge(
  into: Lowering,
  def: DefName,
  instance: unknown,
  label: Label,
  path: Path,
  above: readonly string[] = [],
): void {
  if (into.problems.some(isError)) return;
  const validate = VALIDATORS[def];
  if (validate(instance)) return;
  const inside = (error: SchemaError): boolean => steps(error).length >= above.length;
  const error = validate.errors?.find(inside);
  if (!error) return;
  const at = { ...into, path: [...path, ...steps(error).slice(above.length)] };
  into.problems.push(
    notAllowed({ file: at.file, entry: at.entry, path: at.path }, label, error.keyword),
  );
}

/** A JSON pointer's steps; digits are indices, since no key of a plan begins with one. */
const steps = ({ instancePath }: SchemaError): (string | number)[] =>
  instancePath
    .split('/')
    .slice(1)
    .map((step) =>
      /^[0-9]+$/.test(step) ? Number(step) : step.replace(/~1/g, '/').replace(/~0/g, '~'),
    );
