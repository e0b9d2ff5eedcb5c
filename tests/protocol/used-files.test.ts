import { describe, expect, it } from 'vitest';
import { at, connect, KIT, PLAN, quiet, ROOT, until } from './support/client.ts';

const watched = (client: Awaited<ReturnType<typeof connect>>, uri: string, type: 1 | 2 | 3): void =>
  void client.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri, type }],
  });

const said = (client: Awaited<ReturnType<typeof connect>>, uri: string) =>
  client.last(uri)?.diagnostics.map(({ message }) => message);

describe('files that a plan uses', () => {
  it('are read from the disk, and what they use in turn', async () => {
    const disk = new Map([
      [KIT, 'use: more/lights.shootplan.yaml\n'],
      [`${ROOT}/more/lights.shootplan.yaml`, 'a: !error further on\n'],
    ]);
    const client = await connect({ disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, `${ROOT}/more/lights.shootplan.yaml`)?.[0] === 'further on');
    expect(said(client, PLAN)).toEqual([]);
  });

  it('are read anew when they change on the disk, and missed when they go', async () => {
    const disk = new Map([[KIT, 'a: !error one\n']]);
    const client = await connect({ disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, KIT)?.[0] === 'one');
    disk.set(KIT, 'a: !error two\n');
    watched(client, KIT, 2);
    await until(() => said(client, KIT)?.[0] === 'two');
    disk.delete(KIT);
    watched(client, KIT, 3);
    await until(() => said(client, PLAN)?.[0] === 'not-found');
    expect(said(client, KIT)).toEqual([]);
    disk.set(KIT, 'a: 1\n');
    watched(client, KIT, 1);
    await until(() => said(client, PLAN)?.length === 0);
  });

  it('are looked at again on a save where the client watches nothing', async () => {
    const disk = new Map([[KIT, 'a: !error one\n']]);
    const client = await connect({ disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, KIT)?.[0] === 'one');
    disk.set(KIT, 'a: !error two\n');
    void client.connection.sendNotification('textDocument/didSave', {
      textDocument: { uri: PLAN },
    });
    await until(() => said(client, KIT)?.[0] === 'two');
  });

  it('are the client’s while it has them open, and the disk’s again after', async () => {
    const disk = new Map([[KIT, 'a: !error on the disk\n']]);
    const client = await connect({ disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, KIT)?.[0] === 'on the disk');
    client.open(KIT, 'a: !error unsaved\n');
    await until(() => said(client, KIT)?.[0] === 'unsaved');
    watched(client, KIT, 2);
    await quiet(client);
    expect(said(client, KIT)).toEqual(['unsaved']);
    client.close(KIT);
    await until(() => said(client, KIT)?.[0] === 'on the disk');
  });

  it('are forgotten when no open plan uses them', async () => {
    const client = await connect({ disk: new Map([[KIT, 'a: !error in the kit\n']]) });
    const other = `${ROOT}/b.shootplan.yaml`;
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    client.open(other, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, KIT)?.length === 1);
    client.close(PLAN);
    await quiet(client);
    expect(client.core.text(KIT)).toBeDefined();
    client.close(other);
    await until(() => said(client, KIT)?.length === 0);
    expect(client.core.text(KIT)).toBeUndefined();
  });

  it('in a circle are read once each', async () => {
    const disk = new Map([[KIT, 'use: a.shootplan.yaml\na: !error in the kit\n']]);
    const client = await connect({ disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\nb: !error in the plan\n');
    await until(() => said(client, KIT)?.length === 1 && said(client, PLAN)?.length === 1);
  });
});

describe('files through the client', () => {
  it.each([
    [{ text: 'a: !error from afar\n' }, KIT, 'from afar'],
    [{ error: 'not-found' }, PLAN, 'not-found'],
    [{ error: 'outside-workspace' }, PLAN, 'outside-workspace'],
    [{ error: 'not-text' }, PLAN, 'not-text'],
    [{ error: 'EWHATEVER: some system’s words' }, PLAN, 'unreadable'],
    [null, PLAN, 'unreadable'],
    [{ text: 7 }, PLAN, 'unreadable'],
  ])('answered with %j', async (answer, uri, message) => {
    const client = await connect();
    const asked: unknown[] = [];
    client.connection.onRequest('lamella/readFile', (params: unknown): unknown => {
      asked.push(params);
      return answer;
    });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, uri)?.[0] === message);
    expect(asked).toEqual([{ uri: KIT }]);
  });

  it('are refused where the client does not know the request', async () => {
    const client = await connect();
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => said(client, PLAN)?.[0] === 'unreadable');
  });
});

describe('roots', () => {
  it('are the innermost workspace folder, and change with the folders', async () => {
    const client = await connect({
      capabilities: { workspace: { workspaceFolders: true } },
      folders: [ROOT, `${ROOT}/inner`],
    });
    const { rootOf } = client.coreOptions;
    expect(rootOf(PLAN)).toBe(ROOT);
    expect(rootOf(`${ROOT}/inner/a.shootplan.yaml`)).toBe(`${ROOT}/inner`);
    await client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: [], removed: [{ uri: `${ROOT}/inner`, name: 'inner' }] },
    });
    await quiet(client);
    expect(rootOf(`${ROOT}/inner/a.shootplan.yaml`)).toBe(ROOT);
  });

  it('are the plan’s own folder where there is none, for what it uses too', async () => {
    const disk = new Map([[`${ROOT}/kits/kit.shootplan.yaml`, 'use: ../more.shootplan.yaml\n']]);
    const client = await connect({ disk, folders: null });
    client.open(PLAN, 'use: kits/kit.shootplan.yaml\n');
    await until(() => client.last(PLAN) !== undefined);
    expect(client.coreOptions.rootOf(PLAN)).toBe(ROOT);
    expect(client.coreOptions.rootOf(`${ROOT}/kits/kit.shootplan.yaml`)).toBe(ROOT);
  });
});

it('asks for watchers only where the client offers them', async () => {
  const bare = await connect();
  await quiet(bare);
  expect(bare.registered).toEqual([]);
  const able = await connect({
    capabilities: { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } },
  });
  await until(() => able.registered.length > 0);
  expect(able.registered).toMatchObject([{ method: 'workspace/didChangeWatchedFiles' }]);
});

it('refreshes hints of a plan when the kit that it uses is typed in', async () => {
  const client = await connect({
    capabilities: { workspace: { inlayHint: { refreshSupport: true } } },
  });
  client.open(PLAN, 'use: kit.shootplan.yaml\n');
  client.open(KIT, 'a: 1\n');
  await until(() => client.refreshed.hints > 0);
  await quiet(client);
  const before = client.refreshed.hints;
  client.change(PLAN, 2, [{ range: at(1, 0), text: 'b: 1\n' }]);
  await quiet(client);
  expect(client.refreshed.hints).toBe(before);
  client.change(KIT, 2, [{ range: at(0, 3, 4), text: '2' }]);
  await until(() => client.refreshed.hints > before);
});

it('a used file may lie in another folder of the workspace, and not beside the folders', async () => {
  const other = 'file:///kit/kit.shootplan.yaml';
  const outside = 'file:///else/kit.shootplan.yaml';
  const disk = new Map([
    [other, 'a: !error one\n'],
    [outside, 'a: !error two\n'],
  ]);
  const client = await connect({ disk, folders: [ROOT, 'file:///kit'] });
  client.open(PLAN, 'use: ../kit/kit.shootplan.yaml\n');
  await until(() => said(client, other)?.[0] === 'one');
  client.open(`${ROOT}/b.shootplan.yaml`, 'use: ../else/kit.shootplan.yaml\n');
  await quiet(client);
  expect(said(client, outside)).toBeUndefined();
});

it('a folder that leaves the workspace is read no more, and again once it is back', async () => {
  const kit = 'file:///kit/kit.shootplan.yaml';
  const disk = new Map([[kit, 'a: !error of the kit\n']]);
  const client = await connect({
    capabilities: { workspace: { workspaceFolders: true } },
    folders: [ROOT, 'file:///kit'],
    disk,
  });
  const folder = { uri: 'file:///kit', name: 'kit' };
  const change = (added: readonly (typeof folder)[], removed: readonly (typeof folder)[]) =>
    client.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added, removed },
    });
  client.open(PLAN, 'use: ../kit/kit.shootplan.yaml\n');
  await until(() => said(client, kit)?.[0] === 'of the kit');
  await change([], [folder]);
  await until(() => said(client, kit)?.length === 0);
  expect(client.core.text(kit)).toBeUndefined();
  expect(client.core.reaches(PLAN)).not.toContain(kit);
  // What changes there now is nothing to the plan.
  disk.set(kit, 'b: !error of the kit\n');
  watched(client, kit, 2);
  await quiet(client);
  expect(client.core.text(kit)).toBeUndefined();
  await change([folder], []);
  await until(() => (said(client, kit)?.length ?? 0) > 0);
  expect(client.core.text(kit)).toBe('b: !error of the kit\n');
});
