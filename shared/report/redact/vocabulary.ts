/** Every word that the language itself has: none of them tells anything of an author. */
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shape } from '../../plan/shape.ts';
import { KINDS } from '../../quantity/index.ts';
import { KNOWN_CHECKS } from '../../rules/checks-called-for.ts';
import { RULE_NAMES } from '../../rules/registry.ts';

const WORD = /[\p{L}_][\p{L}\p{N}\p{M}_-]*/gu;

/** Words between numbers: "80 to 700 nm", "1920 x 1080", "f/8", "1e9", and YAML's own. */
const BETWEEN = ['to', 'x', 'f', 'e', 'E', 'yes', 'no', 'true', 'false', 'null'];

/** Units as they are written after exactly 1. */
const SINGLE = ['beat', 'bar', 'frame', 'stop'];

export function languageWords(): ReadonlySet<string> {
  const words = new Set<string>([...BETWEEN, ...SINGLE, ...RULE_NAMES]);
  const add = (text: string): void => {
    words.add(text);
    for (const [word] of text.matchAll(WORD)) words.add(word);
  };
  for (const { name } of KNOWN_CHECKS) add(name);
  for (const { units, words: stated, examples } of Object.values(KINDS))
    for (const text of [...units, ...stated, ...examples]) add(text);
  for (const { keys } of Object.values(SHAPES))
    for (const [key, { shape }] of Object.entries(keys)) {
      add(key);
      for (const word of wordsOf(shape)) add(word);
    }
  return words;
}

function wordsOf(shape: Shape): readonly string[] {
  switch (shape.kind) {
    case 'enum':
      return shape.values;
    case 'word-or-record':
      return shape.words;
    case 'list':
    case 'map':
      return wordsOf(shape.item);
    default:
      return [];
  }
}
