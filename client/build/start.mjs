/**
 * `npm start`: what somebody sees first. Installs and builds what is missing, checks the samples
 * and shows what is found in them, and says how to open them in the editor.
 */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildIfStale } from './build.mjs';
import { ROOT } from './ensure.mjs';

await buildIfStale();
const lamella = path.join(ROOT, 'dist/lamella.cjs');
console.log('$ lamella check samples\n');
const { status } = spawnSync(process.execPath, [lamella, 'check', 'samples'], {
  cwd: ROOT,
  stdio: 'inherit',
});
console.log(`
The same findings, while you type, in the editor:
  npm run package
  code --install-extension dist/lamella.vsix
  code samples
`);
// 1 says that there are findings, which is what this is for; 2 that it could not run.
process.exitCode = status === 0 || status === 1 ? 0 : 1;
