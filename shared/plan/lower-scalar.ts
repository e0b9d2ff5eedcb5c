/** A scalar as the value that its shape takes. */
import { kindOf } from '../quantity/index.ts';
import type { QuantityKind } from '../quantity/kind.ts';
import { roughFailure } from '../quantity/rough-repair.ts';
import type { Field } from './field.ts';
import { asName, plain } from './nearest.ts';
import type { Place } from './place.ts';
import type { ShapeProblem } from './problem.ts';
import type { Shape } from './shape.ts';
import {
  emptyText,
  type Label,
  notAName,
  notOneOf,
  otherSpelling,
  wrongQuantity,
} from './shape-problems.ts';

type ScalarShape = Exclude<Shape, { kind: 'record' | 'word-or-record' | 'list' | 'map' }>;

export const NAME = /^[a-z][a-z0-9-]{0,63}$/;

const YES_NO: Readonly<Record<string, boolean>> = {
  yes: true,
  no: false,
  true: true,
  false: false,
};

/** The value that another word for it means; undefined: it is no other word for any. */
function otherWord(text: string, also: Readonly<Record<string, string>> = {}): string | undefined {
  const word = plain(text);
  return Object.hasOwn(also, word) ? also[word] : undefined;
}

export function lowerScalar(
  text: string,
  shape: ScalarShape,
  label: Label,
  at: Place,
  problems: ShapeProblem[],
): Field<unknown> {
  const known = (value: unknown): Field<unknown> => ({ state: 'known', value, at });
  const invalid = (why: ShapeProblem): Field<unknown> => {
    problems.push(why);
    return { state: 'invalid', at };
  };
  switch (shape.kind) {
    case 'quantity': {
      const kind = kindOf(shape.of);
      const parsed = kind.parse(text);
      const roughly = !parsed.ok && shape.rough ? kind.rough?.parse(text) : undefined;
      if (roughly?.ok) {
        if (roughly.usual !== undefined)
          problems.push(otherSpelling(at, label, text, roughly.usual));
        return { state: 'known', value: roughly.value, at, range: roughly.range };
      }
      if (roughly && !parsed.ok)
        return invalid(
          wrongQuantity(at, label, shape, text, { ok: false, code: roughly.code, likely: [] }),
        );
      if (!parsed.ok) {
        const meant = shape.rough ? roughFailure(kind as QuantityKind<unknown>, text) : undefined;
        return invalid(wrongQuantity(at, label, shape, text, meant ?? parsed));
      }
      if (parsed.usual !== undefined) problems.push(otherSpelling(at, label, text, parsed.usual));
      return known(parsed.value);
    }
    case 'enum':
      if (!shape.values.includes(text)) {
        const meant = otherWord(text, shape.also);
        const why = notOneOf(at, label, shape.values, text, meant);
        if (meant === undefined) return invalid(why);
        problems.push(why);
        return known(meant);
      }
      return known(text);
    case 'ref':
    case 'name':
      return NAME.test(text) ? known(text) : invalid(notAName(at, label, text, asName(text)));
    case 'text':
      return /\S/u.test(text) ? known(text) : invalid(emptyText(at, label));
    case 'yes-no': {
      const value = Object.hasOwn(YES_NO, text) ? YES_NO[text] : undefined;
      if (value === undefined) return invalid(notOneOf(at, label, ['yes', 'no'], text));
      const usual = value ? 'yes' : 'no';
      if (text !== usual) problems.push(otherSpelling(at, label, text, usual));
      return known(value);
    }
  }
}
