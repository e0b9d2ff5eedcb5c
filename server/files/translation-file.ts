/** A translation in a file: `messages.de.json`, whose name says the language. */
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { WrongUse } from '../commands/options.ts';
import { useTranslation } from '../translation.ts';
import { sizeIn } from './read-plan.ts';

/** Many times what the catalogue itself has. */
const MOST_BYTES = 8 * 1024 * 1024;

/**
 * @returns what was refused, each in a sentence
 * @throws {WrongUse} where the file can't be read, or is no JSON
 */
export function useTranslationFile(file: string, cwd: string): readonly string[] {
  const [, language] = /\.([a-zA-Z0-9-]+)\.json$/.exec(file) ?? [];
  let given: unknown;
  try {
    given = JSON.parse(wholeText(path.resolve(cwd, file)));
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    throw new WrongUse(message`The translation ${file} can't be read: ${said}`);
  }
  return useTranslation(given, language);
}

/** A pipe would be waited for, and a device never ends. */
function wholeText(file: string): string {
  const stats = statSync(file);
  if (!stats.isFile()) throw new Error(message`not a regular file`);
  if (stats.size > MOST_BYTES) throw new Error(message`more than ${sizeIn(MOST_BYTES)}`);
  return readFileSync(file, 'utf8');
}
