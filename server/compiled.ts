/**
 * Scripts kept together with what V8 compiled of them: reading half a megabyte of script takes
 * longer than a check does. V8 refuses what another version of it has kept, or one started with
 * other flags, and compiles the script itself: slower, and the same.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Script } from 'node:vm';

/** Set by the build, which runs each such script once to the end and keeps what was compiled. */
const KEEPING = 'LAMELLA_KEEP_COMPILED';

/**
 * Runs a CommonJS script in ASCII, as `require` would, from the file `<script>.compiled` where
 * that is there and V8 takes it. Throws where the script can't be read, and what it throws.
 */
export function runCompiled(file: string): void {
  const kept = `${file}.compiled`;
  // One byte a character: V8 then holds it, and compares it, at half the size.
  const source = readFileSync(file, 'latin1');
  const script = new Script(
    `(function (exports, require, module, __filename, __dirname) {${source}\n})`,
    { filename: file, cachedData: contentsOf(kept) },
  );
  if (process.env[KEEPING])
    process.once('exit', () => writeFileSync(kept, script.createCachedData()));
  const run = script.runInThisContext() as (...scope: unknown[]) => void;
  run(exports, require, module, file, path.dirname(file));
}

function contentsOf(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}
