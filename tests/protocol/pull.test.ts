import { describe, expect, it } from 'vitest';
import {
  DocumentDiagnosticReportKind,
  DocumentDiagnosticRequest,
  type WorkspaceDiagnosticReport,
  WorkspaceDiagnosticRequest,
} from 'vscode-languageserver';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import { at, connect, KIT, PLAN, PULLS, quiet, until } from './support/client.ts';

const ask = (uri: string, previousResultId?: string) => ({
  textDocument: { uri },
  ...(previousResultId !== undefined && { previousResultId }),
});

describe('a client that asks for findings', () => {
  it('is answered about the text as it stands, and sent nothing', async () => {
    const client = await connect({ capabilities: PULLS });
    expect(client.result.capabilities.diagnosticProvider).toMatchObject({
      interFileDependencies: true,
      workspaceDiagnostics: true,
    });
    client.open(PLAN, 'a: 1\n');
    client.change(PLAN, 2, [{ range: at(0, 3, 4), text: '!error broken' }]);
    expect((await client.pull(PLAN)).map(({ message }) => message)).toEqual(['broken']);
    client.close(PLAN);
    expect(await client.pull(PLAN)).toEqual([]);
    await quiet(client);
    expect(client.published).toEqual([]);
  });

  it('is told where nothing changed', async () => {
    const client = await connect({ capabilities: PULLS });
    const { connection } = client;
    client.open(PLAN, 'a: !error broken\n');
    const first = await connection.sendRequest(DocumentDiagnosticRequest.type, ask(PLAN));
    const again = await connection.sendRequest(
      DocumentDiagnosticRequest.type,
      ask(PLAN, first.resultId),
    );
    expect(again).toEqual({
      kind: DocumentDiagnosticReportKind.Unchanged,
      resultId: first.resultId,
    });
    client.change(PLAN, 2, [{ range: at(0, 0), text: ' ' }]);
    const moved = await connection.sendRequest(
      DocumentDiagnosticRequest.type,
      ask(PLAN, first.resultId),
    );
    expect(moved.kind).toBe(DocumentDiagnosticReportKind.Full);
  });

  it('is answered once the files that a plan uses are read', async () => {
    const client = await connect({ capabilities: PULLS, disk: new Map() });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    expect((await client.pull(PLAN)).map(({ message }) => message)).toEqual(['not-found']);
  });

  it('is called to ask again where a change elsewhere changed the answer', async () => {
    const disk = new Map<string, string>();
    const client = await connect({ capabilities: PULLS, disk });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    expect(await client.pull(PLAN)).toHaveLength(1);
    await quiet(client);
    expect(client.refreshed.diagnostics).toBe(0);
    disk.set(KIT, 'a: 1\n');
    void client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: KIT, type: 1 }],
    });
    await until(() => client.refreshed.diagnostics > 0);
    expect(await client.pull(PLAN)).toEqual([]);
  });

  it('is not called to ask again about the text that it is typing in', async () => {
    const client = await connect({ capabilities: PULLS });
    client.open(PLAN, 'a: 1\n');
    await client.pull(PLAN);
    client.change(PLAN, 2, [{ text: 'a: !error broken\n' }]);
    await quiet(client);
    expect(client.refreshed.diagnostics).toBe(0);
  });

  it('is answered with a cancellation where it no longer wants to know', async () => {
    const client = await connect({ capabilities: PULLS });
    client.open(PLAN, 'a: !error broken\n');
    const source = new CancellationTokenSource();
    const answer = client.connection.sendRequest(
      DocumentDiagnosticRequest.type,
      ask(PLAN),
      source.token,
    );
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: -32800 });
  });

  it('drops stale work: a burst with a question after each edit is worked out few times', async () => {
    const client = await connect({ capabilities: PULLS });
    client.open(PLAN, 'a: \n');
    await client.pull(PLAN);
    await quiet(client);
    const before = client.core.calls.findings;
    const answers: Promise<unknown>[] = [];
    for (let version = 2; version <= 21; version++) {
      const source = new CancellationTokenSource();
      client.change(PLAN, version, [{ range: at(0, 3), text: 'x' }]);
      answers.push(
        client.connection
          .sendRequest(DocumentDiagnosticRequest.type, ask(PLAN), source.token)
          .catch(() => undefined),
      );
      source.cancel();
    }
    await Promise.all(answers);
    expect(await client.pull(PLAN)).toEqual([]);
    expect(client.core.calls.findings - before).toBeLessThan(20);
  });
});

describe('files that are used and not open', () => {
  const workspace = (client: Awaited<ReturnType<typeof connect>>, known: [string, string][] = []) =>
    client.connection.sendRequest(WorkspaceDiagnosticRequest.type, {
      previousResultIds: known.map(([uri, value]) => ({ uri, value })),
    });
  const said = ({ items }: WorkspaceDiagnosticReport) =>
    items.map((each) => [each.uri, 'items' in each ? each.items.length : 'unchanged']);

  it('are reported through the question about the workspace, and taken back', async () => {
    const client = await connect({
      capabilities: PULLS,
      disk: new Map([[KIT, 'a: !error in the kit\n']]),
    });
    const waiting = workspace(client);
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    const first = await waiting;
    expect(said(first)).toEqual([[KIT, 1]]);
    const next = workspace(client, [[KIT, first.items[0]?.resultId ?? '']]);
    client.close(PLAN);
    const last = await next;
    expect(said(last)).toEqual([[KIT, 0]]);
    // Said once, not for ever.
    const source = new CancellationTokenSource();
    const never = client.connection.sendRequest(
      WorkspaceDiagnosticRequest.type,
      { previousResultIds: [{ uri: KIT, value: last.items[0]?.resultId ?? '' }] },
      source.token,
    );
    await quiet(client);
    source.cancel();
    await expect(never).rejects.toMatchObject({ code: -32800 });
  });

  it('are added to the answer about a plan where the client takes them', async () => {
    const client = await connect({
      capabilities: { textDocument: { diagnostic: { relatedDocumentSupport: true } } },
      disk: new Map([[KIT, 'a: !error in the kit\n']]),
    });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    const report = await client.connection.sendRequest(DocumentDiagnosticRequest.type, ask(PLAN));
    expect(report).toMatchObject({
      items: [],
      relatedDocuments: { [KIT]: { kind: 'full', items: [{ message: 'in the kit' }] } },
    });
  });

  it('leave no question open when the server is shut down', async () => {
    const client = await connect({ capabilities: PULLS });
    const waiting = workspace(client);
    await quiet(client);
    await client.connection.sendRequest('shutdown');
    expect(await waiting).toEqual({ items: [] });
  });
});
