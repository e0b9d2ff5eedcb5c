/**
 * `npm run long`: builds, then the long runs of tests/long, then every property of the tests on many
 * more cases, with those of timelines in readers that nobody here wrote. Arguments: how many texts,
 * how many times the server is killed, the seed, how many edits of aged cores.
 */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureInstalled, ROOT } from './ensure.mjs';

/** Tests whose properties are tried on more cases when `LAMELLA_LONG` is 1. */
const PROPERTIES = [
  'tests/engine',
  'tests/fuzz',
  'tests/laws',
  'tests/planted',
  'tests/rules',
  'tests/quantity',
  'tests/solve',
  'tests/timeline',
  'tests/looked-at',
  'tests/media/picture.test.ts',
  'tests/assist/completion-everywhere.test.ts',
  'tests/assist/as-it-was.test.ts',
];

ensureInstalled();
await (await import('./build.mjs')).buildIfStale();
const { build } = await import('esbuild');
const outfile = path.join(ROOT, '.cache/long.mjs');
await build({
  entryPoints: [path.join(ROOT, 'tests/long/main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  external: ['esbuild', 'yaml', 'fast-check', 'vscode-jsonrpc'],
});
const run = (args, env = {}) =>
  spawnSync(process.execPath, args, {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  }).status ?? 1;
const scripts = run([outfile, ...process.argv.slice(2)]);
const vitest = path.join(ROOT, 'node_modules/vitest/vitest.mjs');
const properties = run([vitest, 'run', '--passWithNoTests', ...PROPERTIES], { LAMELLA_LONG: '1' });
const readers = run([path.join(ROOT, 'client/build/test.mjs'), '--readers'], { LAMELLA_LONG: '1' });
process.exitCode = scripts || properties || readers;
