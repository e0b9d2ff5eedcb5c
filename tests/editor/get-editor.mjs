/**
 * Lays out the editor that the tests drive, once, under .cache/, and prints where. It is the VS
 * Code server from the npm package code-server, without that package's own front, and without
 * native builds: the two native modules that it loads at its start are replaced by a few lines.
 * `npm ci` empties node_modules, hence the folder of its own.
 */
import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const EDITOR = 'code-server@4.100.3';
/** The search tool's program, which its own package would fetch from elsewhere. */
const RIPGREP = '@vscode/ripgrep-linux-x64@1.18.0';
/** Raised when this layout changes, so that an older cache isn't taken for it. */
const LAYOUT = 'layout-1';

const CACHE = fileURLToPath(new URL('../../.cache/', import.meta.url));
const HOME = path.join(CACHE, `${EDITOR.replace('@', '-')}-${LAYOUT}`);

const run = (command, args, cwd) =>
  execFileSync(command, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });

/** Unpacks what the npm package holds below `inside` into `into`. */
const unpack = (spec, inside, into) => {
  mkdirSync(into, { recursive: true });
  const archive = run('npm', ['pack', '--silent', '--ignore-scripts', spec], into).trim();
  const depth = inside.split('/').length;
  const options = [`--strip-components=${depth}`, '--exclude=*.map', inside];
  run('tar', ['-xzf', archive, ...options], into);
  rmSync(path.join(into, archive));
};

const LOG_MODULE = `'use strict';
const fs = require('fs'), path = require('path');
class Logger {
  constructor(file) { this.file = file; this.level = 2; }
  getLevel() { return this.level; }
  setLevel(level) { this.level = level; }
  clearFormatters() {} setPattern() {} flush() {} drop() {}
  write(level, text) {
    if (level >= this.level) try { fs.appendFileSync(this.file, text + '\\n'); } catch {}
  }
}
['trace', 'debug', 'info', 'warn', 'error', 'critical'].forEach((name, level) => {
  Logger.prototype[name] = function (text) { this.write(level, text); };
});
const create = async (name, file) => {
  await fs.promises.mkdir(path.dirname(file), { recursive: true });
  return new Logger(file);
};
module.exports = { version: 0, setLevel() {}, setFlushOn() {}, Logger,
  createRotatingLogger: create, createAsyncRotatingLogger: create };
`;

const WATCHDOG_MODULE = `'use strict';
exports.start = (pid) => setInterval(() => {
  try { process.kill(pid, 0); } catch { process.exit(87); }
}, 2000).unref();
exports.exit = (code) => process.exit(code || 0);
`;

const layOut = (home) => {
  unpack(EDITOR, 'package/lib/vscode', home);
  const install = ['install', '--omit=dev', '--ignore-scripts', '--no-audit', '--no-fund'];
  run('npm', [...install, '--silent'], home);
  symlinkSync('node_modules', path.join(home, 'node_modules.asar'));
  const modules = path.join(home, 'node_modules');
  writeFileSync(path.join(modules, '@vscode/spdlog/index.js'), LOG_MODULE);
  writeFileSync(path.join(modules, 'native-watchdog/index.js'), WATCHDOG_MODULE);
  unpack(RIPGREP, 'package', path.join(home, 'ripgrep'));
  const bin = path.join(modules, '@vscode/ripgrep/bin');
  cpSync(path.join(home, 'ripgrep/bin'), bin, { recursive: true });
  rmSync(path.join(home, 'ripgrep'), { recursive: true });
};

if (!existsSync(HOME)) {
  const unfinished = `${HOME}.${process.pid}`;
  layOut(unfinished);
  renameSync(unfinished, HOME);
}
console.log(HOME);
