/** What the bundles must not hold, whatever the libraries in them would like to do. */
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';

const dist = (name: string): string =>
  fileURLToPath(new URL(`../../dist/${name}`, import.meta.url));
const read = (name: string): string => readFileSync(dist(name), 'utf8');

/** What a bundle asks its surroundings for when it is loaded. */
const required = (name: string): string[] =>
  [...read(name).matchAll(/\brequire\("([^"]+)"\)/g)].map(([, module]) => module!);

test('the client in a browser asks for the editor and nothing else', () => {
  expect([...new Set(required('client.browser.js'))]).toEqual(['vscode']);
});

test('the server in a worker asks for nothing', () => {
  expect(required('server.browser.js')).toEqual([]);
});

const NODE = [
  ...['lamella-language-server.cjs', 'lamella.cjs', 'lamella-check.cjs', 'lamella-commands.cjs'],
  ...['media-reader.cjs', 'yaml.cjs'],
];

test('no bundle asks for anything that would have to be installed', () => {
  each(['client.cjs', ...NODE], (name) => {
    const known = new Set([...builtinModules, 'vscode']);
    const missing = required(name).filter((module) => !known.has(module.replace(/^node:/, '')));
    expect(missing).toEqual([]);
  });
});

test('no bundle reaches for a network or makes code while it runs', () => {
  each(['server.browser.js', ...NODE], (name) => {
    const text = read(name);
    expect(text).not.toMatch(/\bnew Function\(|\beval\(/);
    expect(text).not.toMatch(/\bfetch\(|\bXMLHttpRequest\b|\bnew WebSocket\(/);
    const network = ['http', 'https', 'http2', 'dgram', 'tls'].flatMap((m) => [m, `node:${m}`]);
    expect(required(name).filter((module) => network.includes(module))).toEqual([]);
  });
});

test.each(['lamella.cjs', 'lamella-language-server.cjs'])(
  '%s can be started by its name',
  (name) => {
    const { stdout, status } = spawnSync(dist(name), ['--version'], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout.trim()).toBe(JSON.parse(readFileSync(dist('../package.json'), 'utf8')).version);
  },
);

test('a check comes compiled, and says the same where it does not', () => {
  const home = mkdtempSync(path.join(tmpdir(), 'lamella-'));
  const check = (more: Record<string, string> = {}) => {
    const args = [path.join(home, 'lamella.cjs'), 'check', dist('../samples')];
    const env = { ...process.env, ...more };
    const { stdout, stderr, status } = spawnSync(process.execPath, args, { encoding: 'utf8', env });
    return { stdout, stderr, status };
  };
  const program = 'lamella-check.cjs';
  for (const name of ['lamella.cjs', program, 'yaml.cjs'])
    copyFileSync(dist(name), path.join(home, name));
  const plain = check();
  expect(plain).toMatchObject({ status: 1, stderr: '' });
  const kept = path.join(home, `${program}.compiled`);
  copyFileSync(dist(`${program}.compiled`), kept);
  expect(check()).toEqual(plain);
  for (const spoiled of ['', 'not compiled', readFileSync(kept).subarray(0, 5_000)]) {
    writeFileSync(kept, spoiled);
    expect(check()).toEqual(plain);
  }
  rmSync(home, { recursive: true });
});

test('what a check says has its apostrophes, though its script is read a byte a character', () => {
  // Read as Latin-1, nothing but ASCII stays what it is.
  expect(read('lamella-check.cjs').match(/[\u0080-\uffff]/g)).toBeNull();
  const args = [dist('lamella.cjs'), 'check', '-', '--stdin-name', 'day.shootplan.yaml'];
  const { stdout } = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    input: 'shootplan: 1\nuse: [absent.shootplan.yaml]\n',
  });
  expect(stdout).toContain('absent.shootplan.yaml was not found.');
});

test('Node takes what was compiled when this was built', () => {
  // Instead of a check: what V8 says of the file, from where it is handed over.
  const asking = `
    const vm = require('node:vm');
    vm.Script = class extends vm.Script {
      constructor(...given) {
        super(...given);
        console.log(this.cachedDataRejected);
        process.exit();
      }
    };
    process.argv.splice(1, 0, 'lamella', 'check');
    require(${JSON.stringify(dist('lamella.cjs'))});`;
  const { stdout } = spawnSync(process.execPath, ['-e', asking], { encoding: 'utf8' });
  expect(stdout).toBe('false\n');
});

test('what reads clips is loaded by nothing but a thread that reads clips', () => {
  for (const name of [...NODE, 'server.browser.js']) {
    if (name === 'media-reader.cjs') continue;
    expect(read(name)).not.toContain('mediabunny');
    expect(required(name).filter((module) => module.includes('media-reader'))).toEqual([]);
  }
  expect(read('media-reader.cjs')).toContain('mediabunny');
});

/** What a user downloads; pictures of its page apart. */
const MOST_PACKED_BYTES = 1_500_000;

test('the extension’s package is under 1.5 MB without pictures', () => {
  const shipped = readFileSync(dist('../.vscodeignore'), 'utf8')
    .split('\n')
    .flatMap((line) => (/^!(dist\/[\w.-]+)$/.exec(line) ?? []).slice(1));
  expect(shipped).toContain('dist/media-reader.cjs');
  const media = readdirSync(dist('../client/media')).filter((name) => /\.(png|svg)$/.test(name));
  const others = [
    ...['client/PAGE.md', 'CHANGELOG.md', 'SECURITY.md', 'LICENSE', 'package.json'],
    ...['package.nls.json', 'client/l10n/bundle.l10n.json'],
    ...['schemas/shootplan.schema.json', 'client/language-configuration.json'],
    ...media.map((name) => `client/media/${name}`),
  ];
  const samples = readdirSync(dist('../samples')).filter((name) => name.endsWith('.yaml'));
  const steps = readdirSync(dist('../client/walkthrough'));
  others.push(
    ...samples.map((name) => `samples/${name}`),
    ...steps.map((name) => `client/walkthrough/${name}`),
  );
  // As vsce packs, with what a zip says of each file.
  const packed = [...shipped, ...others].map(
    (name) => deflateRawSync(readFileSync(dist(`../${name}`))).length + 2 * name.length + 150,
  );
  expect(packed.reduce((sum, bytes) => sum + bytes, 0)).toBeLessThan(MOST_PACKED_BYTES);
});

test('the page in the package carries its pictures, and points at no file', async () => {
  const packaging: { pageWithPictures: () => string } = await import(
    pathToFileURL(dist('../client/build/package.mjs')).href
  );
  const page = readFileSync(dist('../client/PAGE.md'), 'utf8');
  const pictures = [...page.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, file]) => file!);
  expect(pictures.length).toBeGreaterThan(0);
  const packed = packaging.pageWithPictures();
  const targets = [...packed.matchAll(/\]\(([^)]+)\)/g)].map(([, target]) => target!);
  const inline = targets.filter((target) => !/^(?:https:\/\/|#)/.test(target));
  expect(inline).toEqual(
    pictures.map((file) => {
      const bytes = readFileSync(dist(`../client/${file}`));
      return `data:image/png;base64,${bytes.toString('base64')}`;
    }),
  );
  expect(readFileSync(dist('../.vscodeignore'), 'utf8')).toMatch(/^!client\/PAGE\.md$/m);
});

test('the licences of what is bundled go with it', () => {
  const notices = read('THIRD-PARTY-NOTICES.txt');
  for (const name of ['mediabunny', 'qr', 'vscode-languageclient', 'vscode-languageserver', 'yaml'])
    expect(notices).toMatch(new RegExp(`^${name} \\d`, 'm'));
  expect(notices).not.toMatch(/^Licence: undefined/m);
});

test('every package that is bundled is named with its licence and where its source is', async () => {
  const { metafile } = await build({
    absWorkingDir: dist('..'),
    entryPoints: [
      ...['client/node.ts', 'client/fill/sheet-fill.ts'],
      ...['server/node.ts', 'server/media/worker.ts', 'server/cli-commands.ts'],
    ],
    outdir: 'dist',
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    external: ['vscode'],
    logLevel: 'silent',
  });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  const names = new Set(
    inputs.flatMap(([file, { bytesInOutput }]) => {
      const name = /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1];
      return bytesInOutput > 0 && name !== undefined ? [name] : [];
    }),
  );
  expect(names.size).toBeGreaterThan(10);
  const parts = read('THIRD-PARTY-NOTICES.txt').split(`\n${'-'.repeat(72)}\n\n`);
  each([...names], (name) => {
    const part = parts.find((one) => one.split('\n').some((line) => line.startsWith(`${name} `)));
    expect(part, name).toMatch(/^Licence: [\w(]/m);
    expect(part, name).toMatch(/^Source code: https:\/\/\S+$/m);
  });
  // MPL-2.0, 3.2 (a): how its source can be had; 3.1: that it is under this licence.
  const underMpl = parts.filter((one) => /^Licence: MPL-2\.0$/m.test(one));
  expect(underMpl.length).toBeGreaterThan(0);
  for (const part of underMpl) expect(part).toMatch(/Mozilla Public License Version 2\.0/);
});
