/**
 * The bare extension that ours is measured against: a language client and the general YAML server, which
 * checks plans against our schema. Made for the bench alone, of packages from the registry.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build, type Plugin } from 'esbuild';
import { inject } from 'vitest';
import { ROOT } from './paths.ts';

const HOME = path.join(ROOT, '.cache/bench');
const SERVER = 'yaml-language-server';
const VERSION = '1.18.0';

/** Plans are YAML to it, and nothing is asked of it but findings. */
const MANIFEST = {
  name: 'bare-yaml',
  publisher: 'bench',
  version: '0.0.1',
  license: 'MIT',
  engines: { vscode: '^1.91.0' },
  main: './client.cjs',
  activationEvents: ['onLanguage:yaml'],
  contributes: { languages: [{ id: 'yaml', extensions: ['.shootplan.yaml'] }] },
};

const CLIENT = `
const { LanguageClient, TransportKind } = require('vscode-languageclient/node');
const { pathToFileURL } = require('node:url');
exports.activate = (context) => {
  const schema = pathToFileURL(context.asAbsolutePath('schema.json')).href;
  const yaml = { validate: true, schemas: { [schema]: '*.shootplan.yaml' }, schemaStore: { enable: false } };
  const server = { module: context.asAbsolutePath('server.cjs'), transport: TransportKind.ipc };
  const configuration = ({ items }) => items.map(({ section }) => (section === 'yaml' ? yaml : null));
  return new LanguageClient('bare', 'Bare', { run: server, debug: server }, {
    documentSelector: [{ language: 'yaml' }],
    middleware: { workspace: { configuration } },
  }).start();
};
`;

/** What it asks for by a path in the universal format, which nothing can bundle, is there as modules too. */
const MODULES_ONLY: Plugin = {
  name: 'modules-only',
  setup({ onResolve, resolve }) {
    onResolve({ filter: /\/lib\/umd\// }, ({ path: asked, kind, resolveDir }) =>
      resolve(asked.replace('/lib/umd/', '/lib/esm/'), { kind, resolveDir }),
    );
  },
};

/** @returns the folder of extensions that has it and nothing else */
export async function installGeneral(): Promise<string> {
  const modules = path.join(HOME, 'node_modules', SERVER);
  mkdirSync(HOME, { recursive: true });
  if (!existsSync(modules))
    execFileSync('npm', ['install', '--prefix', HOME, '--silent', `${SERVER}@${VERSION}`]);
  const made = path.join(HOME, 'bare-yaml');
  mkdirSync(made, { recursive: true });
  writeFileSync(path.join(made, 'package.json'), JSON.stringify(MANIFEST));
  writeFileSync(path.join(made, 'README.md'), 'For a bench.\n');
  cpSync(path.join(ROOT, 'schemas/shootplan.schema.json'), path.join(made, 'schema.json'));
  const common = { bundle: true, platform: 'node', format: 'cjs', minify: true } as const;
  await build({
    ...common,
    stdin: { contents: CLIENT, resolveDir: ROOT },
    external: ['vscode'],
    outfile: path.join(made, 'client.cjs'),
  });
  await build({
    ...common,
    entryPoints: [path.join(modules, 'lib/esm/server.js')],
    mainFields: ['module', 'main'],
    plugins: [MODULES_ONLY],
    outfile: path.join(made, 'server.cjs'),
  });
  const vsix = path.join(HOME, 'bare-yaml.vsix');
  const vsce = path.join(ROOT, 'node_modules/@vscode/vsce/vsce');
  const options = ['--no-dependencies', '--allow-missing-repository', '--skip-license', '-o', vsix];
  execFileSync(process.execPath, [vsce, 'package', ...options], { cwd: made, stdio: 'ignore' });
  const extensions = path.join(HOME, 'extensions');
  const editor = path.join(inject('editor'), 'out/server-main.js');
  const folders = ['--extensions-dir', extensions, '--server-data-dir', path.join(HOME, 'data')];
  const install = ['--accept-server-license-terms', ...folders, '--install-extension', vsix];
  execFileSync(process.execPath, [editor, ...install, '--force'], { stdio: 'ignore' });
  return extensions;
}
