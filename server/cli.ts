/**
 * `lamella` as a process: only what the command at hand takes is loaded. A check, which is started
 * most, comes compiled.
 */
import path from 'node:path';
import { runCompiled } from './compiled.ts';

if (process.argv[2] === 'check') runCompiled(path.join(__dirname, 'lamella-check.cjs'));
else require(path.join(__dirname, 'lamella-commands.cjs'));
