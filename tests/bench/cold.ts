/** Whole commands from nothing, and how large what is shipped is. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildSync } from 'esbuild';
import { type Spread, spread } from './statistics.ts';

const ROOT = process.cwd();
const RUNS = 15;

function run(script: string, args: readonly string[]): number {
  const start = performance.now();
  try {
    execFileSync(process.execPath, [script, ...args], { stdio: 'ignore' });
  } catch {
    // A sample with findings ends with 1; the time is the same.
  }
  return performance.now() - start;
}

export interface ColdResult {
  readonly check: Spread;
  /** A bundle of `yaml` and the standalone validator that reads and validates the same sample. */
  readonly bare: Spread;
  readonly node: Spread;
}

export function benchCold(): ColdResult {
  const home = path.join(ROOT, '.cache/bench');
  mkdirSync(home, { recursive: true });
  const source = path.join(home, 'bare.ts');
  writeFileSync(
    source,
    `import { readFileSync } from 'node:fs';
import { parseDocument } from 'yaml';
import { VALIDATORS } from ${JSON.stringify(path.join(ROOT, 'shared/plan/generated/validators.js'))};
console.log(VALIDATORS.plan(parseDocument(readFileSync(process.argv[2], 'utf8')).toJS()));
`,
  );
  const bare = path.join(home, 'bare.cjs');
  buildSync({
    entryPoints: [source],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    minify: true,
    outfile: bare,
    nodePaths: [path.join(ROOT, 'node_modules')],
  });
  const empty = path.join(home, 'empty.cjs');
  writeFileSync(empty, '');
  const sample = path.join(ROOT, 'samples/watch-movement.shootplan.yaml');
  const times = { check: [] as number[], bare: [] as number[], node: [] as number[] };
  // In turns, so that what else the machine does weighs on all alike.
  for (let round = 0; round < RUNS; round++) {
    times.check.push(run(path.join(ROOT, 'dist/lamella.cjs'), ['check', sample]));
    times.bare.push(run(bare, [sample]));
    times.node.push(run(empty, []));
  }
  return { check: spread(times.check), bare: spread(times.bare), node: spread(times.node) };
}

export const shippedSizes = (): readonly (readonly [name: string, kilobytes: number])[] =>
  [
    'lamella-check.cjs',
    'lamella-commands.cjs',
    'lamella-language-server.cjs',
    'client.cjs',
    'client.browser.js',
    'server.browser.js',
    'lamella.vsix',
  ]
    .map((name) => [name, path.join(ROOT, 'dist', name)] as const)
    .filter(([, file]) => existsSync(file))
    .map(([name, file]) => [name, Math.round(statSync(file).size / 1000)] as const);
