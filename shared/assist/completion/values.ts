/** What may stand as the value at a place: names, words, quantities, each with what it comes to. */
import type { Shot } from '../../plan/generated/types.ts';
import { kindOf, type QuantityId } from '../../quantity/index.ts';
import { checkItems } from './checks.ts';
import { valuesElsewhere } from './elsewhere.ts';
import { filesToUse } from './files.ts';
import type { Proposal } from './item.ts';
import { named } from './named.ts';
import { type AmongParts, fittingParts } from './part-names.ts';
import { SETTINGS, tryText } from './settings.ts';
import { withUnits } from './units.ts';
import { USUAL } from './usual.ts';
import { shapeOf, type Where } from './where.ts';

/** What stands at the caret and beside it. */
export interface Beside extends AmongParts {
  readonly typed: string;
}

const NOTHING: Beside = { typed: '', beside: [], word: '' };

export function valuesAt(where: Where, caret: Beside = NOTHING): readonly Proposal[] {
  const shape = shapeOf(where);
  switch (shape.kind) {
    case 'ref':
      return where.meaning?.key === 'parts'
        ? fittingParts(where, named(where, shape.groups), caret)
        : named(where, shape.groups);
    case 'enum':
      return words(where, shape.values);
    case 'yes-no':
      return words(where, ['yes', 'no']);
    case 'word-or-record':
      return words(where, shape.words);
    case 'quantity':
      return quantities(where, shape.of, caret.typed);
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
    detail: `as in ${of}`,
    rank,
    kind: 'value',
    about: about(where, text),
  }));
}

/** Ranks of what is proposed for other reasons than its consequence. */
const RANK = { unit: -1, elsewhere: 40, usual: 50, word: 60, example: 70 } as const;

function quantities(where: Where, of: QuantityId, typed: string): readonly Proposal[] {
  const kind = kindOf(of);
  const { meaning, shot, place } = where;
  const key = meaning?.key ?? '';
  const found = new Map<string, Proposal>();
  const add = (text: string, detail: string, rank: number) => {
    const parsed = kind.parse(text);
    if (!parsed.ok || parsed.usual !== undefined || found.has(text)) return;
    const kindOfItem = kind.words.includes(text) ? 'word' : 'value';
    found.set(text, { text, detail, rank, kind: kindOfItem, about: about(where, text) });
  };
  const setting = place.path.length === 1 ? SETTINGS[key as keyof Shot] : undefined;
  if (shot && setting && meaning?.of === 'shot') {
    const units = withUnits(kind, typed);
    for (const text of [...units, ...setting.texts(shot)]) {
      const tried = tryText(shot, key as keyof Shot, text);
      if (!tried) continue;
      const { words: said, rank } = setting.outcome(tried);
      add(text, said, units.includes(text) ? RANK.unit + rank / 100 : rank);
    }
  } else {
    for (const text of withUnits(kind, typed)) add(text, '', RANK.unit);
  }
  valuesElsewhere(where).forEach(({ text, of: name, times }, index) => {
    add(text, times > 1 ? `as in ${times} others` : `as in ${name}`, RANK.elsewhere + index / 100);
  });
  const usual = (meaning && USUAL[meaning.of]?.[key]) ?? [];
  usual.forEach((text, index) => {
    add(text, 'usual', RANK.usual + index / 100);
  });
  for (const word of kind.words) add(word, '', RANK.word);
  // Where the shot says what works, an example says nothing more.
  const examples = found.size > 0 && setting ? [] : (meaning?.keyShape.examples ?? []);
  for (const text of [...examples, ...(found.size > 0 ? [] : kind.examples)])
    add(text, 'for example', RANK.example);
  return [...found.values()].sort((a, b) => a.rank - b.rank);
}
