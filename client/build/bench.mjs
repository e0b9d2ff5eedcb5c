/** `npm run bench`: builds, bundles tests/bench and runs it with a collector that can be called. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, ROOT } from './ensure.mjs';

ensureInstalled();
await (await import('./build.mjs')).buildIfStale();
const { build } = await import('esbuild');
const outfile = path.join(ROOT, '.cache/bench.mjs');
const flags = path.join(ROOT, '.cache/server-flags.mjs');
await build({ entryPoints: [path.join(ROOT, 'client/server-flags.ts')], outfile: flags });
await build({
  entryPoints: [path.join(ROOT, 'tests/bench/main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  external: ['esbuild', 'yaml', 'vscode-jsonrpc'],
});
// With the flags that the extension starts the server with: client/server-flags.ts.
const { SERVER_FLAGS } = await import(pathToFileURL(flags).href);
const { status } = spawnSync(
  process.execPath,
  ['--expose-gc', ...SERVER_FLAGS, outfile, ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit' },
);
process.exitCode = status ?? 1;
