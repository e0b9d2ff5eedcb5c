/**
 * What an entry says, path by path, in one exact spelling: two entries that say the same are the
 * same here, however they are laid out, ordered or spelt.
 */
import type { FieldTexts } from '../../api/compared.ts';
import type { Field } from '../../plan/field.ts';
import type { DefName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shape } from '../../plan/shape.ts';
import { kindOf } from '../../quantity/index.ts';
import type { Ends } from '../../quantity/rough.ts';
import { inLanguage, later, message } from '../../words/message.ts';

/** Stand around the name of another entry; neither can be part of a name. */
const [BEFORE, AFTER] = ['\u0001', '\u0002'];

const named = (name: string): string => `${BEFORE}${name}${AFTER}`;

const NAMED = new RegExp(`${BEFORE}([^${AFTER}]*)${AFTER}`, 'g');

/** The text with the names that it refers to put through `rename`. */
export const renamed = (text: string, rename: (name: string) => string): string =>
  text.replace(NAMED, (_, name: string) => named(rename(name)));

/** As a reader sees it. */
export const shownText = (text: string): string => text.replace(NAMED, '$1');

/** Said of a field whose text can't be read; its own finding says why. */
const UNREAD = later`unreadable`;

export function entryTexts(def: DefName, fields: object): FieldTexts {
  const out = new Map<string, string>();
  recordInto(out, def, fields, []);
  return out;
}

/** One key that is no entry of its own: `mains`, `deliver`, the clips of a shot. */
export function keyTexts(shape: Shape, field: Field<unknown>): FieldTexts {
  const out = new Map<string, string>();
  fieldInto(out, shape, field, []);
  return out;
}

type Texts = Map<string, string>;
type Path = readonly string[];

function recordInto(out: Texts, def: DefName, fields: object, path: Path): void {
  const byKey = fields as Readonly<Record<string, Field<unknown> | undefined>>;
  for (const [key, { shape }] of Object.entries(SHAPES[def].keys)) {
    const field = byKey[key];
    if (field) fieldInto(out, shape, field, [...path, key]);
  }
}

function fieldInto(out: Texts, shape: Shape, field: Field<unknown>, path: Path): void {
  if (field.state === 'missing') return;
  if (field.state === 'invalid') {
    out.set(path.join('.'), inLanguage(UNREAD));
    return;
  }
  const { value, range } = field;
  switch (shape.kind) {
    case 'record':
      recordInto(out, shape.of, value as object, path);
      return;
    case 'word-or-record':
      if (typeof value === 'string') out.set(path.join('.'), value);
      else recordInto(out, shape.of, value as object, path);
      return;
    case 'map':
      for (const [name, item] of value as ReadonlyMap<string, Field<unknown>>)
        fieldInto(out, shape.item, item, [...path, shape.names ? named(name) : name]);
      return;
    case 'list':
      listInto(out, shape.item, value as readonly Field<unknown>[], path);
      return;
    default:
      out.set(path.join('.'), scalarText(shape, value, range));
  }
}

function listInto(out: Texts, item: Shape, items: readonly Field<unknown>[], path: Path): void {
  const isNested = item.kind === 'record' || item.kind === 'map' || item.kind === 'list';
  if (isNested) {
    for (const [index, each] of items.entries())
      fieldInto(out, item, each, [...path, String(index + 1)]);
    return;
  }
  const texts = items.map((each) =>
    each.state === 'known' ? scalarText(item, each.value) : inLanguage(UNREAD),
  );
  out.set(path.join('.'), texts.length === 0 ? message`none` : texts.join(', '));
}

function scalarText(shape: Shape, value: unknown, range?: Ends<unknown>): string {
  if (shape.kind === 'quantity') {
    const kind = kindOf(shape.of);
    return range && kind.rough ? kind.rough.print(range) : kind.print(value);
  }
  if (shape.kind === 'ref') return named(String(value));
  if (shape.kind === 'yes-no') return value === true ? 'yes' : 'no';
  return String(value);
}
