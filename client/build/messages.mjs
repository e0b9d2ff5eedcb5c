/** `node client/build/messages.mjs`: writes the catalogue for translators anew from the sources. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './ensure.mjs';

const outfile = path.join(ROOT, '.cache/messages.mjs');
await build({
  entryPoints: [path.join(ROOT, 'client/build/messages.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { MESSAGES_PATH, messagesText } = await import(pathToFileURL(outfile).href);
const file = path.join(ROOT, MESSAGES_PATH);
const text = messagesText(ROOT);
const isStale = !existsSync(file) || readFileSync(file, 'utf8') !== text;
if (isStale) writeFileSync(file, text);
console.log(`${isStale ? 'written' : 'up to date'}: ${MESSAGES_PATH}`);
