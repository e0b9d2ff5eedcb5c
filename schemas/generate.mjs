// Bundles and runs generate.ts: `node schemas/generate.mjs [--check]`.
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const outfile = path.join(root, '.cache/generate.mjs');
await build({
  entryPoints: [path.join(root, 'schemas/generate.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { generate } = await import(pathToFileURL(outfile).href);
process.exitCode = await generate(root, process.argv.includes('--check'));
