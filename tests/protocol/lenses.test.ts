/** Lenses over shots by the protocol: places at once, words one by one, anew when they are different. */
import { describe, expect, it } from 'vitest';
import type { CodeLens } from 'vscode-languageserver';
import { LENS_KINDS } from '../../shared/api/beside-text.ts';
import { at, connect, KIT, PLAN, quiet, until } from './support/client.ts';

type Client = Awaited<ReturnType<typeof connect>>;
const TEXT = 'use: kit.shootplan.yaml\nshot: drift\nshot: lantern\n';
const textDocument = { uri: PLAN };
const lensesOf = ({ connection }: Client) =>
  connection.sendRequest<CodeLens[]>('textDocument/codeLens', { textDocument });
const resolved = ({ connection }: Client, lens: CodeLens) =>
  connection.sendRequest<CodeLens>('codeLens/resolve', lens);

describe('lenses', () => {
  it('are places without words, which are made of those alone that are resolved', async () => {
    const client = await connect({ initializationOptions: { sheets: true } });
    expect(client.result.capabilities.codeLensProvider).toEqual({ resolveProvider: true });
    client.open(PLAN, TEXT);
    const [first, second, ...others] = await lensesOf(client);
    expect(others).toEqual([]);
    expect([first!.range, first!.command]).toEqual([at(1, 0, 11), undefined]);
    expect(client.core.calls.lensWords).toBe(0);
    expect(await resolved(client, second!)).toMatchObject({
      range: second!.range,
      command: {
        title: 'the state of lantern',
        command: 'lamella.openSheet',
        arguments: [{ uri: PLAN, shot: 'lantern' }],
      },
    });
    expect(client.core.calls.lensWords).toBe(1);
  });

  it('are words without a command to clients that can’t show a sheet', async () => {
    const client = await connect();
    client.open(PLAN, TEXT);
    const [first] = await lensesOf(client);
    expect((await resolved(client, first!)).command).toEqual({
      title: 'the state of drift',
      command: '',
    });
  });

  it('stay without words where their shot or file is gone, or where they are none of ours', async () => {
    const client = await connect();
    client.open(PLAN, TEXT);
    const [first] = await lensesOf(client);
    client.change(PLAN, 2, [{ text: 'a: 1\n' }]);
    expect((await resolved(client, first!)).command).toBeUndefined();
    client.close(PLAN);
    expect((await resolved(client, first!)).command).toBeUndefined();
    expect(await lensesOf(client)).toEqual([]);
    for (const data of [undefined, null, 7, { file: 7, shot: PLAN }])
      expect((await resolved(client, { range: at(0, 0), data })).command).toBeUndefined();
  });

  it('are asked for anew when a kit is typed in that their plan uses, and only then', async () => {
    const client = await connect({
      capabilities: { workspace: { codeLens: { refreshSupport: true } } },
    });
    client.open(PLAN, TEXT);
    client.open(KIT, 'a: 1\n');
    await until(() => client.refreshed.lenses > 0);
    await quiet(client);
    const before = client.refreshed.lenses;
    client.change(PLAN, 2, [{ range: at(3, 0), text: 'b: 1\n' }]);
    await quiet(client);
    expect(client.refreshed.lenses).toBe(before);
    client.change(KIT, 2, [{ range: at(0, 3, 4), text: '2' }]);
    await until(() => client.refreshed.lenses > before);
    expect(client.refreshed.hints).toBe(0);
  });
});

describe('the setting', () => {
  it('takes them away and brings them back', async () => {
    const client = await connect({
      initializationOptions: { lenses: false },
      capabilities: { workspace: { codeLens: { refreshSupport: true } } },
    });
    client.open(PLAN, TEXT);
    expect(await lensesOf(client)).toEqual([]);
    await quiet(client);
    const before = client.refreshed.lenses;
    const change = (lamella: unknown) =>
      client.connection.sendNotification('workspace/didChangeConfiguration', {
        settings: { lamella },
      });
    await change({ lenses: 'perhaps' });
    expect(await lensesOf(client)).toEqual([]);
    await change({ lenses: true });
    expect(await lensesOf(client)).toHaveLength(2);
    await until(() => client.refreshed.lenses > before);
    expect(client.coreOptions.lengths).toBe('mm');
  });

  it('has a part for each kind, of lenses and of hints, and the name that the editor gives it', async () => {
    const all = Object.fromEntries(LENS_KINDS.map((kind) => [kind, false]));
    const client = await connect({
      initializationOptions: { codeLenses: all, hints: { size: false } },
    });
    client.open(PLAN, `${TEXT}aperture: f/16\n`);
    const change = (lamella: unknown) =>
      client.connection.sendNotification('workspace/didChangeConfiguration', {
        settings: { lamella },
      });
    const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
    const hinted = () =>
      client.connection.sendRequest<unknown[]>('textDocument/inlayHint', { textDocument, range });
    expect(await lensesOf(client)).toEqual([]);
    expect(await hinted()).toHaveLength(1);
    await change({ codeLenses: { checks: true, depth: 'yes' }, hints: { aperture: false } });
    const [first] = await lensesOf(client);
    expect((await resolved(client, first!)).command?.title).toBe('checks of drift');
    expect(await hinted()).toEqual([]);
    await change({ codeLens: false });
    expect(await lensesOf(client)).toEqual([]);
  });
});
