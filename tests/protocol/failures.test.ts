import { describe, expect, it } from 'vitest';
import type { CoreOptions } from '../../shared/api/facade.ts';
import { at, connect, PLAN, PULLS, quiet, until } from './support/client.ts';
import { createFakeCore } from './support/fake-core.ts';

const textDocument = { uri: PLAN };
const position = { line: 0, character: 0 };

describe('a failure inside', () => {
  it('is answered as an error, logged, and the server goes on', async () => {
    const client = await connect();
    client.open(PLAN, 'a: !throw\nb: fine\n');
    const ask = (line: number) =>
      client.connection.sendRequest('textDocument/hover', {
        textDocument,
        position: { line, character: 0 },
      });
    await expect(ask(0)).rejects.toMatchObject({ code: -32603, message: 'told to fail' });
    expect(client.logged.join('\n')).toContain('told to fail');
    expect(await ask(1)).not.toBeNull();
  });

  it.each([
    ['sent', {}],
    ['asked for', PULLS],
  ])(
    'is a finding where findings are %s: it never looks like a clean file',
    async (_how, capabilities) => {
      const client = await connect({ capabilities });
      client.open(PLAN, 'a: !throw\n');
      const found = async () => {
        if ('textDocument' in capabilities) return client.pull(PLAN);
        await until(() => client.published.length > 0);
        return client.last(PLAN)?.diagnostics ?? [];
      };
      expect(await found()).toMatchObject([{ code: 'rule-failed', severity: 1 }]);
    },
  );

  it('while following an edit is said once, until the text comes whole again', async () => {
    const createCore = (options: CoreOptions) => {
      const core = createFakeCore(options);
      return {
        ...core,
        edit: () => {
          throw new Error('lost count');
        },
      };
    };
    const client = await connect({ createCore });
    client.open(PLAN, 'a: 1\n');
    client.change(PLAN, 2, [{ range: at(0, 3, 4), text: '2' }]);
    await until(() => client.last(PLAN)?.version === 2);
    expect(client.last(PLAN)?.diagnostics).toMatchObject([{ code: 'rule-failed' }]);
    expect(client.logged.join('\n')).toContain('lost count');
    client.close(PLAN);
    client.open(PLAN, 'a: 2\n', 3);
    await until(() => client.last(PLAN)?.version === 3);
    expect(client.last(PLAN)?.diagnostics).toEqual([]);
  });
});

describe('messages that make no sense', () => {
  it('as unknown requests are answered so; unknown notifications change nothing', async () => {
    const client = await connect();
    await expect(client.connection.sendRequest('lamella/nothing', {})).rejects.toMatchObject({
      code: -32601,
    });
    await client.connection.sendNotification('lamella/nothing', {});
    await client.connection.sendNotification('$/nothing', {});
    client.open(PLAN, 'a: !error x\n');
    await until(() => client.last(PLAN)?.diagnostics.length === 1);
  });

  it.each([
    ['textDocument/hover', {}],
    ['textDocument/hover', null],
    ['textDocument/codeAction', { textDocument, range: at(0, 0) }],
    ['textDocument/inlayHint', { textDocument }],
  ])('%s with %j is answered with an error', async (method, params) => {
    const capabilities = {
      textDocument: {
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
      },
    };
    const client = await connect({ capabilities });
    client.open(PLAN, 'a: f/8\n');
    await expect(client.connection.sendRequest(method, params)).rejects.toMatchObject({
      code: expect.any(Number),
    });
    client.change(PLAN, 2, [{ text: 'a: !error x\n' }]);
    await until(() => client.last(PLAN)?.diagnostics.length === 1);
  });

  it.each([
    ['textDocument/didOpen', { textDocument: { uri: PLAN } }],
    ['textDocument/didOpen', {}],
    ['textDocument/didChange', { textDocument: { uri: PLAN, version: 2 }, contentChanges: null }],
    ['textDocument/didChange', { textDocument: { uri: PLAN, version: 2 }, contentChanges: [{}] }],
    ['textDocument/didClose', {}],
    ['workspace/didChangeWatchedFiles', { changes: 3 }],
    ['workspace/didChangeConfiguration', { settings: null }],
  ])('%s with %j leaves the server alive', async (method, params) => {
    const client = await connect();
    client.open(PLAN, 'a: 1\n');
    await client.connection.sendNotification(method, params);
    await quiet(client);
    client.close(PLAN);
    client.open(PLAN, 'a: !error x\n', 9);
    await until(() => client.last(PLAN)?.version === 9);
    expect(client.last(PLAN)?.diagnostics).toHaveLength(1);
  });

  it('about a text that is not open get an empty answer, and an edit of one is logged', async () => {
    const client = await connect({ capabilities: PULLS });
    const ask = (method: string, rest = {}) =>
      client.connection.sendRequest(method, { textDocument, ...rest });
    expect(await ask('textDocument/hover', { position })).toBeNull();
    expect(await ask('textDocument/documentSymbol')).toEqual([]);
    expect(await ask('textDocument/inlayHint', { range: at(0, 0) })).toEqual([]);
    expect(await client.pull(PLAN)).toEqual([]);
    client.change(PLAN, 2, [{ text: 'a: !error x\n' }]);
    await until(() => client.logged.some((line) => line.includes(PLAN)));
  });
});

it('answers no request once it is shut down', async () => {
  const client = await connect();
  client.open(PLAN, 'a: 1\n');
  await client.connection.sendRequest('shutdown');
  const late = client.connection.sendRequest('textDocument/hover', { textDocument, position });
  await expect(late).rejects.toMatchObject({ code: -32600 });
});
