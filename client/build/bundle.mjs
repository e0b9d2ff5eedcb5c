/** Bundles client, language server and command line into dist/ with esbuild. */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { ROOT } from './ensure.mjs';
import { notices } from './notices.mjs';

/**
 * `command`: started by hand, so it gets a first line that names its interpreter. `late`: reads
 * most plans without the YAML library, so that is a file of its own beside it, read in when it is
 * first needed. `mapped`: what a bug report may quote a stack of gets a map beside it, which isn't
 * shipped, back to files and names. Names are shortened everywhere: a server that kept them for its
 * stacks opened a long plan a twelfth slower. `compiledBy`: the command of which a run to the end
 * leaves what V8 compiled of the script beside it (server/compiled.ts). `inlined`: stands in a page that
 * phones open, some of them old.
 */
const BUNDLES = [
  { entry: 'client/node.ts', out: 'client.cjs', platform: 'node' },
  { entry: 'client/browser.ts', out: 'client.browser.js', platform: 'browser' },
  { entry: 'client/view/sheet-view.ts', out: 'sheet-view.js', platform: 'browser', worker: true },
  { entry: 'client/fill/sheet-fill.ts', out: 'sheet-fill.js', platform: 'browser', inlined: true },
  {
    entry: 'client/review/review-page.ts',
    out: 'review-page.js',
    platform: 'browser',
    inlined: true,
  },
  {
    entry: 'server/node.ts',
    out: 'lamella-language-server.cjs',
    platform: 'node',
    command: true,
    mapped: true,
    late: true,
  },
  {
    entry: 'server/browser.ts',
    out: 'server.browser.js',
    platform: 'browser',
    worker: true,
  },
  { entry: 'server/media/worker.ts', out: 'media-reader.cjs', platform: 'node' },
  { entry: 'server/cli.ts', out: 'lamella.cjs', platform: 'node', command: true },
  {
    entry: 'server/cli-check.ts',
    out: 'lamella-check.cjs',
    platform: 'node',
    late: true,
    compiledBy: ['lamella.cjs', 'check', '../samples'],
  },
  { entry: 'server/cli-commands.ts', out: 'lamella-commands.cjs', platform: 'node' },
  { entry: 'node_modules/yaml/dist/index.js', out: 'yaml.cjs', platform: 'node' },
];

/** What imports `yaml` gets its names at once and the library itself at the first use of one. */
const lateYaml = {
  name: 'late-yaml',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^yaml$/ }, () => ({ path: 'yaml', namespace: 'late' }));
    onLoad({ filter: /.*/, namespace: 'late' }, async () => ({
      contents: `
        const file = __dirname + '/yaml.cjs';
        for (const name of ${JSON.stringify(Object.keys(await import('yaml')))})
          Object.defineProperty(exports, name, { enumerable: true, get: () => require(file)[name] });
      `,
    }));
  },
};

const optionsOf = ({
  entry,
  out,
  platform,
  command,
  worker,
  inlined,
  late,
  mapped,
  compiledBy,
}) => ({
  absWorkingDir: ROOT,
  entryPoints: [entry],
  outfile: path.join('dist', out),
  bundle: true,
  platform,
  target: inlined ? 'es2020' : platform === 'node' ? 'node20' : 'es2022',
  // The editor loads an extension as a CommonJS module, on the web too; a worker is a plain script.
  format: worker || inlined ? 'iife' : 'cjs',
  external: ['vscode'],
  minify: true,
  sourcemap: mapped ? 'linked' : false,
  sourcesContent: false,
  charset: compiledBy || inlined ? 'ascii' : 'utf8',
  legalComments: 'none',
  banner: command && !hasInterpreterLine(entry) ? { js: '#!/usr/bin/env node' } : {},
  plugins: late ? [lateYaml] : [],
  metafile: true,
  logLevel: 'warning',
});

const hasInterpreterLine = (entry) => readFileSync(path.join(ROOT, entry), 'utf8').startsWith('#!');

/**
 * The bundler keeps what templates with a tag hold as it is written, and nearly every text for people
 * is one. Their tags read what is meant and never what is written, so an escape is the same to them.
 */
const inAscii = (script) =>
  script.replace(
    /[\u0080-\uffff]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** Its exit status tells of findings, which the samples have. */
const keepCompiled = (dist, args) =>
  spawnSync(process.execPath, args, {
    cwd: dist,
    env: { ...process.env, LAMELLA_KEEP_COMPILED: '1' },
    stdio: 'ignore',
  });

export const bundle = async () => {
  const absent = BUNDLES.filter(({ entry }) => !existsSync(path.join(ROOT, entry)));
  if (absent.length > 0) {
    throw new Error(`Can't bundle: ${absent.map(({ entry }) => entry).join(', ')} not found.`);
  }
  const dist = path.join(ROOT, 'dist');
  const compiled = BUNDLES.filter(({ compiledBy }) => compiledBy);
  mkdirSync(dist, { recursive: true });
  // What was compiled of another script would be taken for this one's.
  for (const stale of ['built-from', ...compiled.map(({ out }) => `${out}.compiled`)])
    rmSync(path.join(dist, stale), { force: true });
  const results = await Promise.all(BUNDLES.map((each) => build(optionsOf(each))));
  for (const { out } of BUNDLES.filter(({ command }) => command)) {
    chmodSync(path.join(dist, out), 0o755);
  }
  for (const { out, compiledBy } of compiled) {
    const script = path.join(dist, out);
    writeFileSync(script, inAscii(readFileSync(script, 'utf8')));
    keepCompiled(dist, compiledBy);
  }
  const inputs = results.flatMap(({ metafile }) => Object.keys(metafile.inputs));
  writeFileSync(path.join(dist, 'THIRD-PARTY-NOTICES.txt'), notices(inputs));
};
