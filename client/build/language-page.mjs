/** `node client/build/language-page.mjs`: writes the keys of the language's page anew from the schema. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './ensure.mjs';

const outfile = path.join(ROOT, '.cache/language-page.mjs');
await build({
  entryPoints: [path.join(ROOT, 'client/build/language-page.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { LANGUAGE_PATH, languagePageOf } = await import(pathToFileURL(outfile).href);
const { is, shouldBe } = languagePageOf(ROOT);
const isStale = is !== shouldBe;
if (isStale) writeFileSync(path.join(ROOT, LANGUAGE_PATH), shouldBe);
console.log(`${isStale ? 'written' : 'up to date'}: ${LANGUAGE_PATH}`);
