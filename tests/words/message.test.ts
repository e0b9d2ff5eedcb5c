/** Texts and their translations: keys, places, braces, plural forms, and what is refused. */
import { afterEach, describe, expect, it } from 'vitest';
import { inLanguage, keyOf, later, message, setTranslation } from '../../shared/words/message.ts';
import { readTranslation } from '../../shared/words/translation.ts';

const use = (texts: unknown, categoryOf?: (count: number) => string): readonly string[] => {
  const { translation, refused } = readTranslation(texts, 'xx', categoryOf);
  setTranslation(translation);
  return refused;
};

const depth = (there: string, needed: string): string =>
  message`Depth is ${there}, the film needs ${needed}.`;
const DEPTH = 'Depth is {0}, the film needs {1}.';

afterEach(() => setTranslation(null));

describe('a message', () => {
  it('is English where no translation is in force, or has it', () => {
    expect(depth('1 mm', '2 mm')).toBe('Depth is 1 mm, the film needs 2 mm.');
    use({ 'Something else': 'Etwas anderes' });
    expect(depth('1 mm', '2 mm')).toBe('Depth is 1 mm, the film needs 2 mm.');
  });

  it('is found by its static parts, and its values go where the translation has them', () => {
    expect(use({ [DEPTH]: 'Nötig sind {1}, da sind {0}: {1} fehlen nicht.' })).toEqual([]);
    expect(depth('1 mm', '2 mm')).toBe('Nötig sind 2 mm, da sind 1 mm: 2 mm fehlen nicht.');
    setTranslation(null);
    expect(depth('1 mm', '2 mm')).toBe('Depth is 1 mm, the film needs 2 mm.');
  });

  it('takes another translation at once', () => {
    use({ [DEPTH]: '{0} von {1}' });
    expect(depth('1', '2')).toBe('1 von 2');
    use({ [DEPTH]: '{1} > {0}' });
    expect(depth('1', '2')).toBe('2 > 1');
  });

  it('may hold braces, in its own text and in its values', () => {
    const cuts = (name: string): string => message`Write { ${name}: {} }.`;
    expect(keyOf(['Write { ', ': {} }.'])).toBe('Write {{ {0}: {{}} }}.');
    expect(cuts('{0}')).toBe('Write { {0}: {} }.');
    expect(use({ 'Write {{ {0}: {{}} }}.': '{{{0}}} schreiben.' })).toEqual([]);
    expect(cuts('{1}')).toBe('{{1}} schreiben.');
  });

  it('of a table is said when the language is known', () => {
    const NOUN = later`lens {1}`;
    expect(inLanguage(NOUN)).toBe('lens {1}');
    use({ 'lens {{1}}': 'Objektiv' });
    expect(inLanguage(NOUN)).toBe('Objektiv');
    expect(inLanguage('constructor')).toBe('constructor');
  });
});

describe('what is counted', () => {
  const frames = (count: number | string): string => message`${count} frames of ${'a'}`;
  /** As in Polish, from memory: 2 to 4 are few. */
  const few = (count: number): string => (count >= 2 && count <= 4 ? 'few' : 'many');

  it('takes the form of the first number, or the one for all others', () => {
    use({ '{0} frames of {1}': { few: '{0} klatki {1}', other: '{0} klatek {1}' } }, few);
    expect([frames(3), frames(5), frames('2'), frames('−3.5'), frames('x')]).toEqual([
      '3 klatki a',
      '5 klatek a',
      '2 klatki a',
      '−3.5 klatek a',
      'x klatek a',
    ]);
  });
});

describe('a translation is refused by its key', () => {
  it.each([
    [{ [DEPTH]: 'Tiefe {0}' }, `The translation of “${DEPTH}” lacks {1}.`],
    [
      { [DEPTH]: '{0} {1} {2}' },
      `The translation of “${DEPTH}” has {2}, which the message has not.`,
    ],
    [
      { [DEPTH]: '{0} {1} }' },
      `The translation of “${DEPTH}” has a brace that is not doubled and no place for a value.`,
    ],
    [{ [DEPTH]: null }, `The translation of “${DEPTH}” is no text.`],
    [{ [DEPTH]: { one: '{0} {1}' } }, `The translation of “${DEPTH}” has no form \`other\`.`],
    [
      { [DEPTH]: { one: '{0}', other: '{0} {1}' } },
      `The translation of “${DEPTH}” lacks {1} in its form \`one\`.`,
    ],
    [[], 'The translation is no mapping of messages to texts.'],
    ['de', 'The translation is no mapping of messages to texts.'],
  ])('%j', (texts, why) => {
    expect(use(texts)).toEqual([why]);
    expect(depth('1 mm', '2 mm')).toBe('Depth is 1 mm, the film needs 2 mm.');
  });

  it('and the others hold', () => {
    expect(use({ [DEPTH]: '', 'the film': 'der Film' })).toHaveLength(1);
    expect(message`the film`).toBe('der Film');
  });
});
