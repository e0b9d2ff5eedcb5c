/** What a figure's value is made of: numbers of one unit, words, and pairs, lists and records of them. */
import type { Unit } from '../../say/units.ts';

export interface NumberShape {
  readonly kind: 'number';
  readonly unit: Unit;
}

interface WordShape {
  readonly kind: 'word';
}

/** Two numbers of one unit: "24 mm × 13.5 mm", "0.3x to 1.2x". */
export interface PairShape {
  readonly kind: 'pair';
  readonly unit: Unit;
  readonly between: 'by' | 'to';
  /** What is said where the first is more than the second, so that nothing lies between them. */
  readonly empty?: (first: string, second: string) => string;
}

interface ListShape<E> {
  readonly kind: 'list';
  readonly item: ShapeOf<E>;
  readonly between: ', ' | 'to';
}

interface RecordShape<V> {
  readonly kind: 'record';
  readonly parts: { readonly [K in keyof V]-?: PartShape<V[K]> };
}

/** A part of a record; `null`: for programs, which people are not told. */
type PartShape<V> = { readonly label: string | null; readonly is: ShapeOf<V> } | null;

/** The shape that values of type V have to be declared with. */
export type ShapeOf<V> = [V] extends [number]
  ? NumberShape
  : [V] extends [string]
    ? WordShape
    : [V] extends [readonly [number, number]]
      ? PairShape
      : [V] extends [readonly (infer E)[]]
        ? ListShape<E>
        : RecordShape<V>;

export interface Part {
  /** null: it is told apart from its neighbours without a name. */
  readonly label: string | null;
  readonly is: Shape;
}

/** Any of them, for whoever walks through one. */
export type Shape =
  | NumberShape
  | WordShape
  | PairShape
  | { readonly kind: 'list'; readonly item: Shape; readonly between: ', ' | 'to' }
  | { readonly kind: 'record'; readonly parts: Readonly<Record<string, Part | null>> };

export const number = (unit: Unit): NumberShape => ({ kind: 'number', unit });

export const WORD: WordShape = { kind: 'word' };

/** Width and height. */
export const size = (unit: Unit): PairShape => ({ kind: 'pair', unit, between: 'by' });

/** From the least to the greatest. */
export const range = (unit: Unit, empty?: PairShape['empty']): PairShape => ({
  kind: 'pair',
  unit,
  between: 'to',
  ...(empty && { empty }),
});

export const list = <E>(
  item: ShapeOf<E>,
  between: ListShape<E>['between'] = ', ',
): ListShape<E> => ({ kind: 'list', item, between });

/** V is named, so that a part too many doesn't compile, and one forgotten neither. */
export const record = <V>(parts: RecordShape<V>['parts']): RecordShape<V> => ({
  kind: 'record',
  parts,
});

export const part = <S>(label: string | null, is: S): { label: string | null; is: S } => ({
  label,
  is,
});
