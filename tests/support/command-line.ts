/** The command line with everything in it but its process: real files, the real core, the real rules. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommandLine } from '../../server/command-line.ts';
import { readClip } from '../../server/media/read-clip.ts';
import { createCore } from '../../shared/core/core.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import type { PlanBytes, Ran } from '../published/support/command-line.ts';

/** Runs it in a folder that holds these files and is gone afterwards. */
export async function lamellaHere(
  args: readonly string[],
  files: Readonly<Record<string, PlanBytes>>,
): Promise<Ran> {
  const cwd = mkdtempSync(join(tmpdir(), 'lamella-'));
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(join(cwd, name), content);
    return await lamellaIn(cwd, args);
  } finally {
    rmSync(cwd, { recursive: true, force: true });
  }
}

/** Runs it in a folder. */
export async function lamellaIn(cwd: string, args: readonly string[]): Promise<Ran> {
  let [out, err] = ['', ''];
  const status = await runCommandLine(args, {
    createCore,
    rules: ALL_RULES,
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => ({ read: (file) => readClip(file), close: async () => undefined }),
    terminal: {
      cwd,
      colour: false,
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      progress: () => undefined,
      onInterrupt: () => () => undefined,
      input: async () => new Uint8Array(),
    },
  });
  return { status, out, err };
}
