/** What is in the packed extension, as the editor unpacked it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { expect, inject, test } from 'vitest';

const folder = inject('lamella');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => statSync(path.join(folder, name)).isFile())
  .map((name) => name.toLowerCase());

test('it holds what the editor needs, and nothing of the workshop', () => {
  for (const name of [
    'dist/client.cjs',
    'dist/client.browser.js',
    'dist/lamella-language-server.cjs',
    'dist/media-reader.cjs',
    'dist/server.browser.js',
    'dist/third-party-notices.txt',
    'readme.md',
  ])
    expect(files).toContain(name);
  const workshop = /node_modules|\.ts$|\.map$|^(tests|shared|server)\/|^\./;
  expect(files.filter((name) => workshop.test(name) && name !== '.vsixmanifest')).toEqual([]);
});

test('a web editor takes its bundle for what it is', () => {
  const manifest = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  // "module" would make it load the client as an ES module, which a worker of the editor can't.
  expect(manifest.type).toBeUndefined();
  expect(manifest.browser).toBe('./dist/client.browser.js');
});
