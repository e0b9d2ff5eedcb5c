/**
 * `npm test`, `npm run test:editor`, `npm run test:readers`, `npm run pictures`,
 * `npm run bench:editor`: installs, builds and packs what is missing, then hands over to vitest.
 * Further arguments go to vitest.
 */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureInstalled, ROOT } from './ensure.mjs';

const IN_EDITOR = ['run', '--config', 'tests/editor/vitest.config.ts', '--project'];
const KINDS = {
  '--editor': [...IN_EDITOR, 'editor'],
  '--pictures': [...IN_EDITOR, 'pictures'],
  '--readers': ['run', '--config', 'tests/readers/vitest.config.ts'],
  '--activation': [...IN_EDITOR, 'activation'],
};

/** Programs that tests can't do without; what they test would fail one by one and say so too. */
const missing = ['ffmpeg', 'ffprobe'].filter(
  (program) => spawnSync(program, ['-version'], { stdio: 'ignore' }).error !== undefined,
);
if (missing.length > 0)
  console.error(
    `${missing.join(' and ')} not found: tests that read clips make them with it and will fail. Install ffmpeg.`,
  );

const [first, ...others] = process.argv.slice(2);
const kind = KINDS[first];
ensureInstalled();
if (kind && first !== '--readers') {
  await (await import('./package.mjs')).makePackage();
} else if (!kind) {
  await (await import('./build.mjs')).buildIfStale();
}
const vitest = path.join(ROOT, 'node_modules/vitest/vitest.mjs');
const args = kind ? [...kind, ...others] : ['run', ...process.argv.slice(2)];
const { status } = spawnSync(process.execPath, [vitest, ...args], { cwd: ROOT, stdio: 'inherit' });
process.exitCode = status ?? 1;
