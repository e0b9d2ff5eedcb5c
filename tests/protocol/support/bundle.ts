/** The programs as they are shipped: bundled, in a folder of their own for the test's time. */
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll } from 'vitest';

const PROJECT = path.resolve(import.meta.dirname, '../../..');

export interface Bundled {
  /** The bundle's path, once the tests run. */
  file: string;
  /** Modules that went into it, relative to the project's root. */
  inputs: readonly string[];
  text: string;
}

/** Bundles `entry` before the tests of the file that calls this. */
export function bundled(entry: string, platform: 'node' | 'browser' = 'node'): Bundled {
  const result: Bundled = { file: '', inputs: [], text: '' };
  let folder = '';
  beforeAll(async () => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-bundle-'));
    result.file = path.join(folder, 'bundle.cjs');
    const { metafile, outputFiles } = await build({
      absWorkingDir: PROJECT,
      entryPoints: [entry],
      outfile: result.file,
      bundle: true,
      platform,
      target: platform === 'node' ? 'node20' : 'es2022',
      format: platform === 'node' ? 'cjs' : 'iife',
      metafile: true,
      write: false,
      logLevel: 'silent',
    });
    const { writeFile } = await import('node:fs/promises');
    result.text = outputFiles[0]!.text;
    await writeFile(result.file, result.text);
    result.inputs = Object.keys(metafile.inputs);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return result;
}
