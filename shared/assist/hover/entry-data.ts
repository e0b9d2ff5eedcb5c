/** An entry's own data as lines of a table, in the units that the reader prefers. */
import type { Field } from '../../plan/field.ts';
import type { DefName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shape } from '../../plan/shape.ts';
import type { Ends } from '../../quantity/rough.ts';
import { Say } from '../../say/say.ts';
import { shown, shownField } from '../../say/shown.ts';
import { inLanguage, message } from '../../words/message.ts';
import { code, type Line, line, plain } from './markdown.ts';

/** Longer texts are cut: a hover is no place to read them. */
const LONGEST_TEXT = 120;
const MOST_ITEMS = 8;

/** Focal lengths and sensors are in millimetres everywhere (common practice). */
const ALWAYS_MM: ReadonlySet<string> = new Set([
  'focal-length',
  'sensor',
  'area',
  'flange-distance',
]);
const IN_MM = new Say();

type Fields = Readonly<Record<string, Field<unknown>>>;

/** What is given of an entry, in the order of the language; `about` is for people and left out. */
export const entryLines = (def: DefName, fields: object, say: Say): Line[] =>
  Object.entries(SHAPES[def].keys).flatMap(([key, { shape, title }]) => {
    const field = (fields as Fields)[key];
    if (key === 'about' || field?.state !== 'known') return [];
    return [line(inLanguage(title), fieldText(shape, field, say, key))];
  });

/** Keys that nothing lacks: what a bench would help with, the hover says by itself. */
const UNMISSED: ReadonlySet<string> = new Set(['about', 'bench']);

/** Keys of the entry that nothing is said for. */
export const keysLeftOut = (def: DefName, fields: object): readonly string[] =>
  Object.keys(SHAPES[def].keys).filter(
    (key) => !UNMISSED.has(key) && (fields as Fields)[key]?.state === 'missing',
  );

/** A known field as Markdown: a range where it was written as one. */
export const fieldText = (
  shape: Shape,
  field: { readonly value: unknown; readonly range?: Ends<unknown> },
  say: Say,
  key?: string,
): string =>
  shape.kind === 'quantity' && field.range
    ? shownField(shape.of, field, ALWAYS_MM.has(key ?? '') ? IN_MM : say)
    : valueText(shape, field.value, say, key);

/** A known value as Markdown; `key`: of which key, where it has a usual unit of its own. */
export function valueText(shape: Shape, value: unknown, say: Say, key?: string): string {
  switch (shape.kind) {
    case 'quantity':
      return shown(shape.of, value, ALWAYS_MM.has(key ?? '') ? IN_MM : say);
    case 'yes-no':
      return value === true ? 'yes' : 'no';
    case 'record':
      return recordText(shape.of, value as Fields, say);
    case 'word-or-record':
      return typeof value === 'string' ? plain(value) : recordText(shape.of, value as Fields, say);
    case 'list':
      return itemsText(
        (value as readonly Field<unknown>[]).map((item) =>
          item.state === 'known' ? valueText(shape.item, item.value, say) : '?',
        ),
      );
    case 'map':
      return itemsText([...(value as ReadonlyMap<string, unknown>).keys()].map(plain));
    default:
      return shortText(String(value));
  }
}

const recordText = (def: DefName, fields: Fields, say: Say): string =>
  Object.entries(SHAPES[def].keys)
    .flatMap(([key, { shape }]) => {
      const field = fields[key];
      return field?.state === 'known' ? [`${key} ${fieldText(shape, field, say)}`] : [];
    })
    .join(', ');

const itemsText = (items: readonly string[]): string =>
  items.length === 0
    ? message`none`
    : [
        ...items.slice(0, MOST_ITEMS),
        ...(items.length > MOST_ITEMS ? [message`${items.length - MOST_ITEMS} more`] : []),
      ].join(', ');

export const shortText = (text: string): string => {
  const characters = [...text];
  return characters.length > LONGEST_TEXT
    ? `${plain(characters.slice(0, LONGEST_TEXT).join(''))}…`
    : plain(text);
};

/** "Not given: `length`, `front-diameter`." */
export const leftOutWords = (keys: readonly string[]): string =>
  keys.length === 0 ? '' : message`Not given: ${keys.map(code).join(', ')}.`;
