/** The server as it is shipped, in a process of its own over standard input and output. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { text as readAll } from 'node:stream/consumers';
import { pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import {
  createProtocolConnection,
  type Diagnostic,
  PublishDiagnosticsNotification,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { planTemplate } from '../../shared/assist/template.ts';
import { bundled } from './support/bundle.ts';
import { until } from './support/client.ts';

const server = bundled('server/node.ts');

function start(args: readonly string[] = ['--stdio']): ChildProcessWithoutNullStreams {
  const child = spawn(process.execPath, [server.file, ...args]);
  onTestFinished(() => {
    child.kill();
  });
  child.stdin.on('error', () => undefined);
  return child;
}

function talk(child: ChildProcessWithoutNullStreams) {
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
    undefined,
  );
  const findings = new Map<string, Diagnostic[]>();
  connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
    findings.set(uri, diagnostics);
  });
  connection.listen();
  return { connection, findings };
}

const INITIALIZE = { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null };

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  for (const [name, content] of Object.entries(files))
    writeFileSync(path.join(folder, name), content);
  return folder;
}

const uriIn = (folder: string, name: string): string => pathToFileURL(path.join(folder, name)).href;

const opened = (uri: string, text: string) => ({
  textDocument: { uri, languageId: 'shootplan', version: 1, text },
});

describe('the server in a process', () => {
  it('finds in a plan what is wrong there, with its kit from the disk', async () => {
    const [kit = '', plan = ''] = [
      planTemplate().split('rigs:')[0],
      `rigs:${planTemplate().split('rigs:')[1]}`,
    ];
    const folder = folderWith({ 'kit.shootplan.yaml': kit });
    const { connection, findings } = talk(start());
    await connection.sendRequest('initialize', INITIALIZE);
    await connection.sendNotification('initialized', {});
    const uri = uriIn(folder, 'plan.shootplan.yaml');
    const text = `shootplan: 1\nuse: [kit.shootplan.yaml]\n${plan.replace('close-100', 'close-10')}`;
    await connection.sendNotification('textDocument/didOpen', opened(uri, text));
    await until(() => findings.has(uri));
    expect(findings.get(uri)?.map(({ code }) => code)).toContain('unknown-name');
    const line = text.split('\n').findIndex((each) => each.includes('close-10'));
    const character = text.split('\n')[line]!.indexOf('close-10');
    await connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version: 2 },
      contentChanges: [
        {
          range: { start: { line, character }, end: { line, character: character + 8 } },
          text: 'close-100',
        },
      ],
    });
    await until(() => !findings.get(uri)?.some(({ code }) => code === 'unknown-name'));
  });

  it('does not follow a link out of the workspace', async () => {
    const [inside, outside] = [folderWith({}), folderWith({ 'kit.shootplan.yaml': 'a: 1\n' })];
    symlinkSync(path.join(outside, 'kit.shootplan.yaml'), path.join(inside, 'kit.shootplan.yaml'));
    const { connection, findings } = talk(start());
    const folders = [{ uri: pathToFileURL(inside).href, name: 'inside' }];
    await connection.sendRequest('initialize', { ...INITIALIZE, workspaceFolders: folders });
    await connection.sendNotification('initialized', {});
    const uri = uriIn(inside, 'plan.shootplan.yaml');
    const text = 'shootplan: 1\nuse: [kit.shootplan.yaml]\n';
    await connection.sendNotification('textDocument/didOpen', opened(uri, text));
    await until(() => findings.has(uri));
    expect(findings.get(uri)?.map(({ code }) => code)).toEqual(['use-not-found']);
  });

  it('exits with 0 after a shutdown, with 1 without one', async () => {
    for (const [shutdown, status] of [
      [true, 0],
      [false, 1],
    ] as const) {
      const child = start();
      const { connection } = talk(child);
      await connection.sendRequest('initialize', INITIALIZE);
      if (shutdown) await connection.sendRequest('shutdown');
      const exited = once(child, 'exit');
      await connection.sendNotification('exit');
      expect((await exited)[0]).toBe(status);
    }
  });

  it('ends when the editor goes away without a word', async () => {
    const child = start();
    const { connection } = talk(child);
    await connection.sendRequest('initialize', INITIALIZE);
    const exited = once(child, 'exit');
    child.stdin.end();
    expect((await exited)[0]).toBe(1);
  });

  it('answers a request before its start as the protocol says', async () => {
    const { connection } = talk(start());
    const early = connection.sendRequest('textDocument/hover', {
      textDocument: { uri: 'file:///a' },
      position: { line: 0, character: 0 },
    });
    await expect(early).rejects.toMatchObject({ code: -32002 });
  });

  it('takes standard input and output where nothing else is said', async () => {
    const { connection } = talk(start([]));
    expect(await connection.sendRequest('initialize', INITIALIZE)).toMatchObject({
      serverInfo: { name: 'Lamella', version },
    });
  });

  it('starts once', async () => {
    const { connection } = talk(start());
    expect(await connection.sendRequest('initialize', INITIALIZE)).toHaveProperty('capabilities');
    await expect(connection.sendRequest('initialize', INITIALIZE)).rejects.toMatchObject({
      code: -32600,
      message: expect.stringContaining('The server is initialized already.'),
    });
  });

  it('says its version and what it takes', async () => {
    for (const [argument, said] of [
      ['--version', version],
      ['--help', '--node-ipc'],
    ] as const) {
      const child = start([argument]);
      child.stdin.end();
      expect(await readAll(child.stdout)).toContain(said);
    }
  });
});

describe('bytes that are no messages', () => {
  const framed = (body: string): string =>
    `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;

  it.each([
    ['a body that is no JSON', framed('{ not json')],
    ['a body that is no message', framed('[]')],
    ['a body that is null', framed('null')],
    ['a request without a method', framed('{"jsonrpc":"2.0","id":5}')],
    ['an answer that nobody asked for', framed('{"jsonrpc":"2.0","id":99,"result":1}')],
  ])('%s: the server goes on', async (_what, bytes) => {
    const child = start();
    child.stdin.write(bytes);
    const { connection } = talk(child);
    expect(await connection.sendRequest('initialize', INITIALIZE)).toHaveProperty('capabilities');
  });
});

it('keeps Node out of what a browser loads', async () => {
  const { build } = await import('esbuild');
  const { metafile } = await build({
    entryPoints: [path.resolve(import.meta.dirname, '../../server/browser.ts')],
    bundle: true,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    metafile: true,
    write: false,
    outfile: 'server.browser.js',
    logLevel: 'silent',
  });
  const inputs = Object.keys(metafile.inputs);
  expect(inputs.some((input) => input.endsWith('server/server.ts'))).toBe(true);
  const imported = Object.values(metafile.inputs).flatMap((input) => input.imports);
  expect(imported.filter(({ path: to }) => to.startsWith('node:'))).toEqual([]);
  expect(
    inputs.filter((input) => /\/(node|files)\//.test(input) && input.startsWith('server/')),
  ).toEqual([]);
});
