/** A kind in whose place one of a few words may stand: `auto`, `none`, `closest`. */
import { editDistance } from './edit-distance.ts';
import type { QuantityKind } from './kind.ts';

interface WordOrSpec<W extends string> {
  readonly id: string;
  readonly title: string;
  /** Each word with its other understood spellings. */
  readonly words: Readonly<Record<W, readonly string[]>>;
  readonly examples: readonly string[];
}

export function wordOr<W extends string, T>(
  spec: WordOrSpec<W>,
  kind: QuantityKind<T>,
): QuantityKind<W | T> {
  const words = Object.keys(spec.words) as W[];
  const capitalised = (word: string): string => word[0]!.toUpperCase() + word.slice(1);
  const spelled = new Map<string, W>();
  for (const word of words) {
    for (const text of [word, capitalised(word), ...spec.words[word]]) spelled.set(text, word);
  }
  const isWord = (value: W | T): value is W =>
    typeof value === 'string' && words.includes(value as W);
  return {
    id: spec.id,
    title: spec.title,
    units: kind.units,
    pattern: `^(?:${[...spelled.keys()].join('|')}|${kind.pattern.slice(1, -1)})$`,
    words,
    examples: spec.examples,
    ...(kind.bare ? { bare: kind.bare } : {}),
    parse(text) {
      const word = spelled.get(text);
      if (word !== undefined) {
        return text === word ? { ok: true, value: word } : { ok: true, value: word, usual: word };
      }
      const parsed = kind.parse(text);
      if (parsed.ok) return parsed;
      const near = words.filter(
        (word) => editDistance(word, text.toLowerCase()) <= Math.min(2, word.length >> 1),
      );
      return { ...parsed, likely: [...new Set([...near, ...parsed.likely])] };
    },
    print: (value, as) => (isWord(value) ? value : kind.print(value as T, as)),
  };
}
