/** `node client/build/rule-reference.mjs`: writes the rule reference anew from the rules. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './ensure.mjs';

const outfile = path.join(ROOT, '.cache/rule-reference.mjs');
await build({
  entryPoints: [path.join(ROOT, 'client/build/rule-reference.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { REFERENCE_PATH, ruleReference } = await import(pathToFileURL(outfile).href);
const file = path.join(ROOT, REFERENCE_PATH);
const text = ruleReference();
const isStale = !existsSync(file) || readFileSync(file, 'utf8') !== text;
if (isStale) writeFileSync(file, text);
console.log(`${isStale ? 'written' : 'up to date'}: ${REFERENCE_PATH}`);
