/** A translation in a file: `messages.de.json`, whose name says the language. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { WrongUse } from '../commands/options.ts';
import { useTranslation } from '../translation.ts';

/**
 * @returns what was refused, each in a sentence
 * @throws {WrongUse} where the file can't be read, or is no JSON
 */
export function useTranslationFile(file: string, cwd: string): readonly string[] {
  const [, language] = /\.([a-zA-Z0-9-]+)\.json$/.exec(file) ?? [];
  let given: unknown;
  try {
    given = JSON.parse(readFileSync(path.resolve(cwd, file), 'utf8'));
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    throw new WrongUse(message`The translation ${file} can't be read: ${said}`);
  }
  return useTranslation(given, language);
}
