/** What tests in the editor begin with: plans in a folder, one of them open; closed by themselves. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test as base, describe } from 'vitest';
import type { Folder, Host, HostOptions, StartHost } from './host.ts';
import { startNodeHost } from './node-host.ts';
import { ROOT } from './paths.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, type PageOptions, Workbench } from './workbench.ts';

export interface Opened {
  readonly host: Host;
  readonly workbench: Workbench;
}

export interface OpenOptions extends HostOptions, Omit<PageOptions, 'before'> {
  /** Done before the editor is opened. */
  readonly before?: (folder: Folder) => void;
}

/** A first answer has the start of the workbench, the extension and the server before it. */
export const WAIT = { timeout: 30_000, interval: 100 };

export const HOSTS: readonly (readonly [name: string, StartHost])[] = [
  ['extensions in a Node process', startNodeHost],
  ['extensions in a web worker', startWebHost],
];

export const sample = (name: string): string =>
  readFileSync(path.join(ROOT, 'samples', name), 'utf8');

const inBrowser = base.extend(
  'browser',
  { scope: 'file' },
  // biome-ignore lint/correctness/noEmptyPattern: vitest reads from the pattern what is wanted
  async ({}, { onCleanup }) => {
    const browser = await launchBrowser();
    onCleanup(() => browser.close());
    return browser;
  },
);

/**
 * For tests that each have an editor of their own: `open` takes a host and texts by name, the first of
 * which is open.
 */
export const test = inBrowser.extend('open', ({ browser, task }, { onCleanup }) => {
  const hosts: Host[] = [];
  const workbenches: Workbench[] = [];
  onCleanup(async () => {
    for (const workbench of workbenches) {
      if (task.result?.state === 'fail') await workbench.picture(`failed, ${task.name}`);
      await workbench.close();
    }
    for (const host of hosts) await host.stop();
  });
  return async (
    startHost: StartHost,
    files: Readonly<Record<string, string>>,
    { before, settings, extensions, ...page }: OpenOptions = {},
  ): Promise<Opened> => {
    const host = await startHost(files, { settings, extensions });
    hosts.push(host);
    before?.(host.folder);
    const workbench = await Workbench.open(browser, host, Object.keys(files)[0]!, page);
    workbenches.push(workbench);
    return { host, workbench };
  };
});

/**
 * Tests that share one workbench, first in the one host and then in the other: each goes on where the
 * one before it stopped.
 *
 * @param files texts by name; the first is open
 * @param tests says them with the `test` that it is given, which hands them what is open
 */
export function inEachHost(
  files: Readonly<Record<string, string>>,
  tests: (test: ReturnType<typeof testWith>, host: string) => void,
  options: HostOptions = {},
): void {
  describe.each(HOSTS)('%s', (name, startHost) => {
    let host: Host;
    let workbench: Workbench;
    inBrowser.beforeAll(async ({ browser }) => {
      host = await startHost(files, options);
      workbench = await Workbench.open(browser, host, Object.keys(files)[0]!);
    });
    inBrowser.afterAll(async () => {
      await workbench?.close();
      await host?.stop();
    });
    inBrowser.afterEach(async ({ task }) => {
      if (task.result?.state === 'fail') await workbench.picture(`failed, ${task.name}, ${name}`);
    });
    const opened = testWith(() => ({ host, workbench }));
    tests(opened, name);
  });
}

const testWith = (opened: () => Opened) =>
  base.extend('host', () => opened().host).extend('workbench', () => opened().workbench);
