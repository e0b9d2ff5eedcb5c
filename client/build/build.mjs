/** `npm run build`: the bundles, made anew only when something they are made from has changed. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ensureInstalled, ROOT } from './ensure.mjs';

const SOURCES = ['client', 'server', 'shared', 'schemas', 'package.json', 'package-lock.json'];
const MARK = path.join(ROOT, 'dist/built-from');

const filesUnder = (at) =>
  readdirSync(at, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();

/** One digest of every file that the bundles depend on, names included. */
const digest = () => {
  const hash = createHash('sha256');
  for (const source of SOURCES) {
    const at = path.join(ROOT, source);
    for (const file of path.extname(source) ? [at] : filesUnder(at)) {
      hash.update(path.relative(ROOT, file)).update('\0').update(readFileSync(file)).update('\0');
    }
  }
  return hash.digest('hex');
};

/** Installs and bundles what is missing or stale. */
export const buildIfStale = async () => {
  ensureInstalled();
  const now = digest();
  if (existsSync(MARK) && readFileSync(MARK, 'utf8') === now) return;
  const { bundle } = await import('./bundle.mjs');
  await bundle();
  writeFileSync(MARK, now);
};

if (process.argv[1] && path.resolve(process.argv[1]) === import.meta.filename) {
  try {
    await buildIfStale();
    console.log('dist/ is up to date.');
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
