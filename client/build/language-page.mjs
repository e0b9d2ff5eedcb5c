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
const { languagePageOf } = await import(pathToFileURL(outfile).href);
const { page, is, shouldBe } = languagePageOf(ROOT);
const isStale = is !== shouldBe;
if (isStale) writeFileSync(path.join(ROOT, page), shouldBe);
console.log(`${isStale ? 'written' : 'up to date'}: ${page}`);
