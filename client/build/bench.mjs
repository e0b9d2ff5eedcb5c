/** `npm run bench`: builds, bundles tests/bench and runs it with a collector that can be called. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureInstalled, ROOT } from './ensure.mjs';

ensureInstalled();
await (await import('./build.mjs')).buildIfStale();
const { build } = await import('esbuild');
const outfile = path.join(ROOT, '.cache/bench.mjs');
await build({
  entryPoints: [path.join(ROOT, 'tests/bench/main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  external: ['esbuild', 'yaml', 'vscode-jsonrpc'],
});
const { status } = spawnSync(process.execPath, ['--expose-gc', outfile, ...process.argv.slice(2)], {
  cwd: ROOT,
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
