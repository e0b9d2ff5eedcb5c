/** Puts the translation in force that somebody brought: an editor, or who calls the command line. */
import { setTranslation } from '../shared/words/message.ts';
import { readTranslation } from '../shared/words/translation.ts';

/**
 * @param given message to text, as JSON gives it; undefined or null: everything in English
 * @param language its tag by BCP 47, for its ways of counting; left out or unknown: as in English
 * @returns what was refused, each in a sentence; the rest is in force
 */
export function useTranslation(given: unknown, language: string | undefined): readonly string[] {
  if (given === undefined || given === null) {
    setTranslation(null);
    return [];
  }
  const { translation, refused } = readTranslation(given, language, countingIn(language));
  setTranslation(translation);
  return refused;
}

function countingIn(language: string | undefined): ((count: number) => string) | undefined {
  if (language === undefined) return undefined;
  try {
    const rules = new Intl.PluralRules(language);
    return (count) => rules.select(count);
  } catch {
    return undefined;
  }
}
