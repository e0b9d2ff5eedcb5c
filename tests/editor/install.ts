/** Before all tests: the editor is laid out and the packed extension installed into it, once. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { GET_EDITOR, VSIX } from './paths.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the editor lies. */
    editor: string;
    /** Folder of installed extensions. */
    extensions: string;
    /** The extension as the editor unpacked it. */
    lamella: string;
  }
}

const node = (...args: string[]): string =>
  execFileSync(process.execPath, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

export default (project: TestProject): (() => void) => {
  const editor = node(GET_EDITOR).trim().split('\n').at(-1)!;
  const home = mkdtempSync(path.join(tmpdir(), 'lamella-editor-'));
  const extensions = path.join(home, 'extensions');
  const folders = ['--server-data-dir', path.join(home, 'data'), '--extensions-dir', extensions];
  const server = path.join(editor, 'out/server-main.js');
  node(server, '--accept-server-license-terms', ...folders, '--install-extension', VSIX, '--force');
  const installed = readdirSync(extensions).find((name) => name.startsWith('lamella.lamella-'));
  if (!installed) throw new Error(`The editor did not install ${VSIX}.`);
  project.provide('editor', editor);
  project.provide('extensions', extensions);
  project.provide('lamella', path.join(extensions, installed));
  return () => rmSync(home, { recursive: true, force: true });
};
