/** `node client/build/json-page.mjs`: writes the figures of the JSON's page anew from their catalogue. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './ensure.mjs';

const outfile = path.join(ROOT, '.cache/json-page.mjs');
await build({
  entryPoints: [path.join(ROOT, 'client/build/json-page.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { JSON_PAGE_PATH, jsonPageOf } = await import(pathToFileURL(outfile).href);
const { is, shouldBe } = jsonPageOf(ROOT);
const isStale = is !== shouldBe;
if (isStale) writeFileSync(path.join(ROOT, JSON_PAGE_PATH), shouldBe);
console.log(`${isStale ? 'written' : 'up to date'}: ${JSON_PAGE_PATH}`);
