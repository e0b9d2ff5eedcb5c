/** `npm run mutants`: bundles tests/mutants and runs it. What it does stands in tests/mutants/README.md. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureInstalled, ROOT } from './ensure.mjs';

ensureInstalled();
const { build } = await import('esbuild');
// As deep as the sources that it is made of, which find the project's folder from their own.
const outfile = path.join(ROOT, '.cache/mutants/bundle/main.mjs');
await build({
  entryPoints: [path.join(ROOT, 'tests/mutants/main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outfile,
});
const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], {
  cwd: ROOT,
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
