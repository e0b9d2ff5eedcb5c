/** `npm run package`: dist/lamella.vsix, with the files that .vscodeignore lets through. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildIfStale } from './build.mjs';
import { ROOT } from './ensure.mjs';

/** The extension's own page: shorter than the README, which speaks of a clone. */
export const PAGE = 'client/PAGE.md';

export const VSIX = path.join(ROOT, 'dist/lamella.vsix');

const vsce = (cwd, ...args) =>
  execFileSync(process.execPath, [path.join(ROOT, 'node_modules/@vscode/vsce/vsce'), ...args], {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });

/**
 * The page with its pictures in it: an editor shows the page of an installed extension without a folder
 * that a relative path could start from.
 */
export const pageWithPictures = () => {
  const folder = path.join(ROOT, path.dirname(PAGE));
  return readFileSync(path.join(ROOT, PAGE), 'utf8').replace(
    /(!\[[^\]]*\]\()([^):]+\.png)\)/g,
    (_, before, picture) =>
      `${before}data:image/png;base64,${readFileSync(path.join(folder, picture), 'base64')})`,
  );
};

/**
 * The manifest without what concerns only the project. `type` has to go: with it, a web editor
 * would take the client's bundle for an ES module, which it can't load.
 */
const shippedManifest = () => {
  const manifest = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8'));
  for (const key of ['type', 'private', 'bin', 'scripts', 'devDependencies']) delete manifest[key];
  return `${JSON.stringify(manifest, null, 2)}\n`;
};

export const makePackage = async () => {
  await buildIfStale();
  const staged = path.join(ROOT, 'dist/package');
  rmSync(staged, { recursive: true, force: true });
  const files = vsce(ROOT, 'ls', '--no-dependencies', '--readme-path', PAGE)
    .split('\n')
    .filter(Boolean);
  for (const file of [...files, '.vscodeignore']) {
    mkdirSync(path.dirname(path.join(staged, file)), { recursive: true });
    cpSync(path.join(ROOT, file), path.join(staged, file));
  }
  writeFileSync(path.join(staged, 'package.json'), shippedManifest());
  writeFileSync(path.join(staged, PAGE), pageWithPictures());
  const options = [
    '--no-dependencies',
    ...['--readme-path', PAGE],
    '--no-rewrite-relative-links',
    '--allow-missing-repository',
  ];
  vsce(staged, 'package', ...options, '--out', VSIX);
  rmSync(staged, { recursive: true });
};

if (process.argv[1] && path.resolve(process.argv[1]) === import.meta.filename) {
  await makePackage();
  console.log(`dist/lamella.vsix: ${Math.round(statSync(VSIX).size / 1000)} kB`);
}
