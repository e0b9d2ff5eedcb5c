/** The language of a translation is what the name of its file says. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { useTranslationFile } from '../../server/files/translation-file.ts';
import { languageInForce, setTranslation } from '../../shared/words/message.ts';

afterEach(() => setTranslation(null));

// Tags with digits are as good as others: RFC 5646, 2.2.4, "es-419" is its own example.
test.each([
  ['messages.de.json', 'de'],
  ['messages.zh-Hant.json', 'zh-Hant'],
  ['messages.es-419.json', 'es-419'],
  ['messages.json', 'en'],
])('%s', (name, language) => {
  const folder = mkdtempSync(path.join(tmpdir(), 'lamella-'));
  writeFileSync(path.join(folder, name), '{}');
  expect(useTranslationFile(name, folder)).toEqual([]);
  expect(languageInForce()).toBe(language);
  rmSync(folder, { recursive: true });
});
