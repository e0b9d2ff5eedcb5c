/** An editor with a folder of files that lie on the disk, so that tests see what was saved. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export interface Host {
  /** The page that shows the folder with `file` open in it. */
  address(file?: string): string;
  readonly folder: Folder;
  stop(): Promise<void>;
}

export interface HostOptions {
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Folder of installed extensions, ours among them; left out: ours as it was packed. */
  readonly extensions?: string;
}

export type StartHost = (
  files: Readonly<Record<string, string>>,
  options?: HostOptions,
) => Promise<Host>;

/** Settings that keep the workbench still; both hosts use them. */
export const SETTINGS = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'editor.accessibilitySupport': 'off',
  'editor.inlayHints.enabled': 'on',
  'editor.minimap.enabled': false,
  'files.autoSave': 'off',
  'git.enabled': false,
};

export class Folder {
  readonly path = mkdtempSync(path.join(tmpdir(), 'lamella-plans-'));

  constructor(files: Record<string, string>) {
    for (const [name, text] of Object.entries(files)) this.write(name, text);
  }

  read(name: string): string {
    return readFileSync(path.join(this.path, name), 'utf8');
  }

  write(name: string, text: string): void {
    const file = path.join(this.path, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}
