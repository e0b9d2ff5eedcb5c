/**
 * Installs what is missing, so that a bare clone works at the first command. Plain Node: it runs
 * before anything is installed. Quick when nothing is missing: it compares the lock with what npm
 * noted in node_modules, and looks whether each package is there.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const packagesOf = (file) => JSON.parse(readFileSync(path.join(ROOT, file), 'utf8')).packages;

/** Names of packages that the lock asks for and node_modules doesn't hold. */
const missingPackages = () => {
  const noted = 'node_modules/.package-lock.json';
  const installed = existsSync(path.join(ROOT, noted)) ? packagesOf(noted) : {};
  return Object.entries(packagesOf('package-lock.json'))
    .filter(([name, wanted]) => {
      // Optional ones are builds for other systems: npm leaves them out.
      if (name === '' || wanted.optional) return false;
      const same = installed[name]?.version === wanted.version;
      return !same || !existsSync(path.join(ROOT, name, 'package.json'));
    })
    .map(([name]) => name);
};

export const ensureInstalled = () => {
  const missing = missingPackages();
  if (missing.length === 0) return;
  // `ci` where there is nothing yet; it would empty a folder that lacks only a package or two.
  const command = existsSync(path.join(ROOT, 'node_modules')) ? 'install' : 'ci';
  console.log(`Installing ${missing.length} packages (npm ${command}) …`);
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  execFileSync(npm, [command, '--no-audit', '--no-fund'], {
    cwd: ROOT,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
};
