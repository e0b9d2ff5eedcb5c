/**
 * Figures as JSON, a contract: keys are added, never changed; the unit is in the name; what is
 * not known is null with its reason in `notKnown`; "endless" stands for no limit.
 */
import { inLanguage, later } from '../words/message.ts';
import type { Figure } from './figure.ts';
import { reasonOf } from './figure.ts';

export type JsonFigure = number | 'endless' | readonly number[] | readonly object[] | object | null;

export interface ShotFiguresJson {
  readonly [figure: string]:
    | JsonFigure
    | Readonly<Record<string, string>>
    | readonly string[]
    | undefined;
  /** Figure to reason, for every figure that is null. Nested ones as `depthMm.needed`. */
  readonly notKnown: Readonly<Record<string, string>>;
  /** Figures that were measured on the bench, not computed; left out: none. */
  readonly measured?: readonly string[];
}

/** Said where an input is invalid: the finding at the input says the rest. */
const INVALID_INPUT = later`it depends on an invalid entry`;

const endless = (value: number): number | 'endless' =>
  value === Number.POSITIVE_INFINITY ? 'endless' : value;

/** What a figure's value becomes: numbers and arrays of numbers as they are, infinity in words. */
function plain(value: unknown): JsonFigure {
  if (typeof value === 'number') return endless(value);
  if (Array.isArray(value)) return value.map((item) => plain(item)) as JsonFigure;
  return value as JsonFigure;
}

/**
 * @param figures name (or group of names) to figure, in the order of the contract
 */
export function figuresToJson(
  figures: Readonly<Record<string, Figure<unknown> | Readonly<Record<string, Figure<unknown>>>>>,
): ShotFiguresJson {
  const notKnown: Record<string, string> = {};
  const measured: string[] = [];
  const one = (figure: Figure<unknown>, name: string): JsonFigure => {
    if (figure.known) {
      if (figure.measured) measured.push(name);
      return plain(figure.value);
    }
    notKnown[name] = reasonOf(figure) ?? inLanguage(INVALID_INPUT);
    return null;
  };
  const out: Record<string, JsonFigure> = {};
  for (const [name, entry] of Object.entries(figures)) {
    out[name] = isFigure(entry)
      ? one(entry, name)
      : Object.fromEntries(
          Object.entries(entry).map(([part, figure]) => [part, one(figure, `${name}.${part}`)]),
        );
  }
  return { ...out, notKnown, ...(measured.length > 0 && { measured }) };
}

const isFigure = (
  entry: Figure<unknown> | Readonly<Record<string, Figure<unknown>>>,
): entry is Figure<unknown> => typeof (entry as Figure<unknown>).known === 'boolean';
