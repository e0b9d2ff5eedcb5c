/** A figure's value in words, by its declaration. */

import { endsWords } from '../../say/between.ts';
import type { Say } from '../../say/say.ts';
import { UNITS } from '../../say/units.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { NumberBounds } from '../json.ts';
import type { Declaration } from './declaration.ts';
import type { NumberShape, PairShape, Part, Shape } from './shape.ts';

/** @param value as the JSON has it, known */
export const sayFigure = ({ is }: Pick<Declaration, 'is'>, value: unknown, say: Say): string =>
  said(is, value, say);

/**
 * What lies round a value: "24 to 27" behind f/25, "70 to 74 × 39 to 42" behind two sizes. Empty
 * where no digit shows it.
 */
export function boundsWords(
  is: Shape,
  value: unknown,
  bounds: NumberBounds | readonly NumberBounds[],
  say: Say,
): string {
  if (is.kind === 'number') {
    const words = (number: unknown) => said(is, number, say);
    const [low, high] = bounds as NumberBounds;
    return endsWords(words(value), words(low), words(high));
  }
  if (is.kind !== 'pair') return '';
  const number: NumberShape = { kind: 'number', unit: is.unit };
  const each = (bounds as readonly NumberBounds[]).map((ends, index) => {
    const at = (value as readonly unknown[])[index];
    return [boundsWords(number, at, ends, say), said(number, at, say)] as const;
  });
  if (each.every(([words]) => words === '')) return '';
  return each.map(([words, at]) => words || at).join(is.between === 'by' ? ' × ' : ', ');
}

/** Whether its value is one plain number, which can be bounded. */
export const isNumber = (
  declaration: Pick<Declaration, 'is'>,
): declaration is { readonly is: NumberShape } => declaration.is.kind === 'number';

function said(shape: Shape, value: unknown, say: Say): string {
  switch (shape.kind) {
    case 'number':
      return value === 'endless' ? message`endless` : UNITS[shape.unit].say(Number(value), say);
    case 'word':
      return String(value);
    case 'pair':
      return pairWords(shape, value as readonly unknown[], say);
    case 'list':
      return (value as readonly unknown[]).length === 0
        ? message`none`
        : itemsOf(shape.item, value as readonly unknown[], say).join(
            shape.between === 'to' ? message` to ` : shape.between,
          );
    case 'record':
      return partsOf(shape.parts, value as object, say).join(', ');
  }
}

function pairWords(
  { unit, between, empty }: PairShape,
  values: readonly unknown[],
  say: Say,
): string {
  const [first = '', second = ''] = values.map((value) =>
    said({ kind: 'number', unit }, value, say),
  );
  if (empty && Number(values[0]) > Number(values[1])) return empty(first, second);
  return `${first}${between === 'by' ? ' × ' : message` to `}${second}`;
}

/** Records of a list are told apart by commas, and so have none between their parts. */
const itemsOf = (item: Shape, values: readonly unknown[], say: Say): readonly string[] =>
  values.map((value) =>
    item.kind === 'record'
      ? partsOf(item.parts, value as object, say).join(' ')
      : said(item, value, say),
  );

const partsOf = (
  parts: Readonly<Record<string, Part | null>>,
  value: object,
  say: Say,
): readonly string[] =>
  Object.entries(parts).flatMap(([key, part]) => {
    if (part === null) return [];
    const words = said(part.is, (value as Readonly<Record<string, unknown>>)[key], say);
    return [part.label === null ? words : `${inLanguage(part.label)} ${words}`];
  });
