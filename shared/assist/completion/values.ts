/** What may stand as the value at a place: names, words, quantities, each with what it comes to. */
import { message } from '../../words/message.ts';
import { checkItems } from './checks.ts';
import { valuesElsewhere } from './elsewhere.ts';
import { filesToUse } from './files.ts';
import type { Proposal } from './item.ts';
import { named } from './named.ts';
import { type AmongParts, fittingParts } from './part-names.ts';
import { quantitiesAt } from './quantities.ts';
import { shapeOf, type Where } from './where.ts';

/** What stands at the caret and beside it. */
interface Beside extends AmongParts {
  readonly typed: string;
  /** What stood there before it was taken out. */
  readonly former?: string | undefined;
}

const NOTHING: Beside = { typed: '', beside: [], word: '' };

export function valuesAt(where: Where, caret: Beside = NOTHING): readonly Proposal[] {
  const shape = shapeOf(where);
  switch (shape.kind) {
    case 'ref':
      return where.meaning?.key === 'parts'
        ? fittingParts(where, named(where, shape.groups), caret)
        : named(where, shape.groups, caret);
    case 'enum':
      return words(where, shape.values);
    case 'yes-no':
      return words(where, ['yes', 'no']);
    case 'word-or-record':
      return words(where, shape.words);
    case 'quantity':
      return quantitiesAt(where, shape.of, caret);
    case 'name':
      return where.meaning?.key === 'every-shot' ? checkItems(where) : seen(where);
    case 'text':
      return where.place.entry === 'use' ? filesToUse(where) : [];
    default:
      return [];
  }
}

const about = ({ place: { entry, path } }: Where, text: string) =>
  ({ kind: 'value', entry, path, text }) as const;

const words = (where: Where, values: readonly string[]): Proposal[] =>
  values.map((text, rank) => ({ text, detail: '', rank, kind: 'word', about: about(where, text) }));

function seen(where: Where): Proposal[] {
  return valuesElsewhere(where).map(({ text, of }, rank) => ({
    text,
    detail: message`as in ${of}`,
    rank,
    kind: 'value',
    about: about(where, text),
  }));
}
