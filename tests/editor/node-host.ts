/** The workbench with its extensions in a Node process, as on a desktop or a remote machine. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { inject } from 'vitest';
import { Folder, SETTINGS, type StartHost } from './host.ts';

export const startNodeHost: StartHost = async (
  files,
  { settings, extensions = inject('extensions') } = {},
) => {
  const folder = new Folder(files);
  const data = mkdtempSync(path.join(tmpdir(), 'lamella-data-'));
  mkdirSync(path.join(data, 'data/User'), { recursive: true });
  writeFileSync(
    path.join(data, 'data/User/settings.json'),
    JSON.stringify({ ...SETTINGS, ...settings }),
  );
  const port = await freePort();
  const server = spawn(
    process.execPath,
    [
      path.join(inject('editor'), 'out/server-main.js'),
      ...['--host', '127.0.0.1', '--port', String(port), '--without-connection-token'],
      ...['--accept-server-license-terms', '--telemetry-level', 'off'],
      ...['--server-data-dir', data, '--extensions-dir', extensions],
      '--disable-workspace-trust',
    ],
    // A group of its own: the server starts further processes, which have to end with it.
    { stdio: 'ignore', detached: true },
  );
  await answering(server, `http://127.0.0.1:${port}/version`);
  return {
    folder,
    address: (file) => {
      const query = new URLSearchParams({ folder: folder.path });
      const uri = `vscode-remote://127.0.0.1:${port}${folder.path}/${file}`;
      if (file) query.set('payload', JSON.stringify([['openFile', uri]]));
      return `http://127.0.0.1:${port}/?${query}`;
    },
    stop: async () => {
      await endGroup(server);
      folder.remove();
      rmSync(data, { recursive: true, force: true });
    },
  };
};

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === 'object' ? resolve(address.port) : reject(),
      );
    });
  });

const answering = async (server: ChildProcess, url: string): Promise<void> => {
  while (server.exitCode === null) {
    const answer = await fetch(url).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`The editor's server ended with ${server.exitCode} before it answered.`);
};

const endGroup = (server: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (server.exitCode !== null || server.pid === undefined) return resolve();
    const group = -server.pid;
    const kill = setTimeout(() => process.kill(group, 'SIGKILL'), 5_000);
    server.once('exit', () => {
      clearTimeout(kill);
      resolve();
    });
    process.kill(group, 'SIGTERM');
  });
