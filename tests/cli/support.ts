import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import type { Create } from '../../server/files/plan-set.ts';
import { readClip } from '../../server/media/read-clip.ts';
import type { Core } from '../../shared/api/facade.ts';
import type { ExplainedRule } from '../../shared/report/explain.ts';
import { createFakeCore } from '../protocol/support/fake-core.ts';

const folders: string[] = [];

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder of its own with these files, gone after the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-'));
  folders.push(folder);
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), content);
  }
  return folder;
}

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Two rules of our own: what the rules say is not what these tests are about. */
export const RULES: readonly ExplainedRule[] = [
  {
    name: 'told-to',
    severity: 'warning',
    docs: {
      when: 'a line says so.',
      why: 'A test has to decide what is found.',
      remedy: 'Remove the mark.',
      bad: [{ says: 'A mark.', change: { 'shots/a/aperture': '!error' } }],
      good: [{ says: 'No mark.', change: { 'shots/a/aperture': null } }],
    },
  },
  {
    name: 'also-told-to',
    severity: 'note',
    docs: { when: 'nothing does.', why: 'Lists need two.', remedy: 'None.', bad: [], good: [] },
  },
];

/** The command line in this process, over the core that finds what a text tells it to. */
export async function lamella(
  cwd: string,
  args: readonly string[],
  {
    input = '' as string | Uint8Array,
    colour = false,
    createCore = createFakeCore as Create<Core>,
  } = {},
): Promise<Ran> {
  let [out, err] = ['', ''];
  const status = await runCommandLine(args, {
    createCore,
    rules: RULES,
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => ({
      read: (file) => readClip(file),
      close: async () => undefined,
    }),
    terminal: {
      cwd,
      colour,
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      progress: () => undefined,
      onInterrupt: () => () => undefined,
      input: async (most) => Buffer.from(input).subarray(0, most + 1),
    },
  });
  return { status, out, err };
}
