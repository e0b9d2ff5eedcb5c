/** `node client/build/messages.mjs`: writes the catalogues for translators anew from the sources. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
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
const { BUNDLE_PATH, bundleText, MESSAGES_PATH, messagesText } = await import(
  pathToFileURL(outfile).href
);
for (const [name, text] of [
  [MESSAGES_PATH, messagesText(ROOT)],
  [BUNDLE_PATH, bundleText(ROOT)],
]) {
  const file = path.join(ROOT, name);
  const isStale = !existsSync(file) || readFileSync(file, 'utf8') !== text;
  mkdirSync(path.dirname(file), { recursive: true });
  if (isStale) writeFileSync(file, text);
  console.log(`${isStale ? 'written' : 'up to date'}: ${name}`);
}
