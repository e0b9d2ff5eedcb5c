import { describe, expect, it } from 'vitest';
import type { CodeAction, CodeActionContext, Range } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { plainText } from '../../server/handlers/hover.ts';
import { at, connect, PLAN, quiet, ROOT, until } from './support/client.ts';

type Client = Awaited<ReturnType<typeof connect>>;
const textDocument = { uri: PLAN };

const ACTIONS = {
  codeAction: {
    codeActionLiteralSupport: { codeActionKind: { valueSet: [] } },
    isPreferredSupport: true,
  },
};

describe('hover', () => {
  const hoverOf = async (client: Client) => {
    client.open(PLAN, 'aperture: f/16\n');
    return client.connection.sendRequest('textDocument/hover', {
      textDocument,
      position: { line: 0, character: 12 },
    });
  };

  it('is Markdown for clients that show it', async () => {
    const client = await connect({
      capabilities: { textDocument: { hover: { contentFormat: ['plaintext', 'markdown'] } } },
    });
    expect(await hoverOf(client)).toEqual({
      contents: { kind: 'markdown', value: '**aperture: f/16** \\*as written\\*' },
      range: at(0, 0, 14),
    });
  });

  it('is plain words for others', async () => {
    expect(await hoverOf(await connect())).toMatchObject({
      contents: { kind: 'plaintext', value: 'aperture: f/16 *as written*' },
    });
  });
});

it('makes plain words of the Markdown that hovers are written in', () => {
  const markdown = [
    '**Aperture** of `far-off`',
    '',
    '| works as | f/62 \\| f/64 |',
    '|:--|:--|',
    '| depth | 1.5 mm &amp; more |',
    'a\\_name, https:\u200b//nowhere',
  ].join('\n');
  expect(plainText(markdown)).toBe(
    'Aperture of far-off\n\nworks as: f/62 | f/64\ndepth: 1.5 mm & more\na_name, https://nowhere',
  );
});

it('says what it looks at to a client that traces', async () => {
  const client = await connect();
  const traced: string[] = [];
  client.connection.onNotification('$/logTrace', ({ message }: { message: string }) => {
    traced.push(message);
  });
  client.open(PLAN, 'a: 1\n');
  await until(() => client.published.length > 0);
  expect(traced).toEqual([]);
  await client.connection.sendNotification('$/setTrace', { value: 'verbose' });
  client.change(PLAN, 2, [{ text: 'a: 2\n' }]);
  await until(() => traced.some((message) => message.includes(PLAN)));
});

it('gives hints in the range that is asked for', async () => {
  const client = await connect();
  client.open(PLAN, 'a: f/8\nb: f/16\n');
  const hints = await client.connection.sendRequest('textDocument/inlayHint', {
    textDocument,
    range: at(1, 0, 0, 2),
  });
  expect(hints).toEqual([
    {
      position: { line: 1, character: 7 },
      label: 'f/32 effective',
      tooltip: 'why',
      paddingLeft: true,
    },
  ]);
});

describe('symbols', () => {
  const symbolsOf = async (client: Client) => {
    client.open(PLAN, 'shots:\n');
    return client.connection.sendRequest('textDocument/documentSymbol', { textDocument });
  };

  it('lie in one another for clients that show it', async () => {
    const documentSymbol = { hierarchicalDocumentSymbolSupport: true };
    const client = await connect({ capabilities: { textDocument: { documentSymbol } } });
    expect(await symbolsOf(client)).toMatchObject([
      { name: 'shots', selectionRange: at(0, 0, 6), children: [{ name: 'shots-entry' }] },
    ]);
  });

  it('are a flat list for others', async () => {
    expect(await symbolsOf(await connect())).toMatchObject([
      { name: 'shots', location: { uri: PLAN } },
      { name: 'shots-entry', containerName: 'shots' },
    ]);
  });
});

describe('code actions', () => {
  const TEXT = 'a: !error broken (fix: 1)\nb: !priced dim (fix: 2 s)\nc: !warning soft (fix: 3)\n';

  const actionsOf = (client: Client, range: Range, context: Partial<CodeActionContext> = {}) =>
    client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range,
      context: { diagnostics: [], ...context },
    });

  it('are not offered to clients that take only commands', async () => {
    const client = await connect();
    expect(client.result.capabilities.codeActionProvider).toBeUndefined();
  });

  it('say their sideEffects, belong to their finding, and prefer the only way out', async () => {
    const client = await connect({ capabilities: { textDocument: ACTIONS } });
    client.open(PLAN, TEXT, 3);
    await until(() => client.published.length > 0);
    const diagnostics = client.last(PLAN)?.diagnostics ?? [];
    expect(await actionsOf(client, at(0, 5), { diagnostics })).toEqual([
      {
        title: 'Write 1',
        kind: 'quickfix',
        isPreferred: true,
        diagnostics: [diagnostics[0]],
        edit: { changes: { [PLAN]: [{ range: at(0, 3, 25), newText: '1' }] } },
      },
    ]);
    const [priced] = await actionsOf(client, at(1, 5));
    expect(priced?.title).toBe('Write 2 s (costs a stop)');
    expect(priced).not.toHaveProperty('isPreferred');
  });

  it('are tied to the version where the client can check it', async () => {
    const client = await connect({
      capabilities: {
        textDocument: ACTIONS,
        workspace: { workspaceEdit: { documentChanges: true } },
      },
    });
    client.open(PLAN, TEXT, 3);
    const [fix] = await actionsOf(client, at(0, 5));
    expect(fix?.edit).toEqual({
      documentChanges: [
        {
          textDocument: { uri: PLAN, version: 3 },
          edits: [{ range: at(0, 3, 25), newText: '1' }],
        },
      ],
    });
  });

  it('fix all that has no sideEffects, where they are asked to', async () => {
    const client = await connect({ capabilities: { textDocument: ACTIONS } });
    client.open(PLAN, TEXT);
    const kinds = (await actionsOf(client, at(0, 0, 0, 3))).map(({ kind }) => kind);
    expect(kinds).toEqual(['quickfix', 'quickfix', 'quickfix']);
    for (const only of ['source', 'source.fixAll', 'source.fixAll.lamella']) {
      const [all, ...others] = await actionsOf(client, at(0, 0), { only: [only] });
      expect(others).toEqual([]);
      const document = TextDocument.create(PLAN, 'shootplan', 1, TEXT);
      const edits = all?.edit?.changes?.[PLAN] ?? [];
      expect(TextDocument.applyEdits(document, edits)).toBe(
        'a: 1\nb: !priced dim (fix: 2 s)\nc: 3\n',
      );
    }
    expect(await actionsOf(client, at(0, 5), { only: ['refactor'] })).toEqual([]);
    expect(await actionsOf(client, at(0, 5), { only: ['sourceMap'] })).toEqual([]);
  });
});

describe('the state of a plan', () => {
  it('is sent to clients that asked for it, when it changes', async () => {
    const client = await connect({ initializationOptions: { state: true } });
    client.open(PLAN, 'shot: drift\n');
    await until(() => client.states.length > 0);
    client.change(PLAN, 2, [{ range: at(1, 0), text: 'a: 1\n' }]);
    client.change(PLAN, 3, [{ range: at(1, 0), text: 'shot: lantern\n' }]);
    await until(() => client.states.at(-1)?.shots === 2);
    client.change(PLAN, 4, [{ range: at(1, 0), text: 'b: 1\n' }]);
    await quiet(client);
    expect(client.states.every(({ uri, ready }) => uri === PLAN && ready === 0)).toBe(true);
    expect(client.states.map(({ shots }) => shots)).toEqual([1, 2]);
  });

  it('is not sent to others', async () => {
    const client = await connect();
    client.open(PLAN, 'shot: drift\n');
    await until(() => client.published.length > 0);
    await quiet(client);
    expect(client.states).toEqual([]);
  });
});

describe('the unit of lengths', () => {
  it('comes with the start, and millimetres from anything else', async () => {
    const inches = await connect({ initializationOptions: { lengths: 'inches' } });
    expect(inches.coreOptions.lengths).toBe('inches');
    for (const initializationOptions of [undefined, null, 'inches', { lengths: 'furlongs' }])
      expect((await connect({ initializationOptions })).coreOptions.lengths).toBe('mm');
  });

  it('follows the settings, sent or asked for', async () => {
    const sent = await connect();
    const change = (client: Client, lengths: string) =>
      client.connection.sendNotification('workspace/didChangeConfiguration', {
        settings: { lamella: { lengths } },
      });
    await change(sent, 'inches');
    await until(() => sent.coreOptions.lengths === 'inches');
    await change(sent, 'furlongs');
    await quiet(sent);
    expect(sent.coreOptions.lengths).toBe('inches');

    const settings = { lengths: 'inches' };
    const asked = await connect({ capabilities: { workspace: { configuration: true } }, settings });
    await until(() => asked.coreOptions.lengths === 'inches');
    settings.lengths = 'mm';
    await change(asked, 'ignored');
    await until(() => asked.coreOptions.lengths === 'mm');
  });
});

describe('what is offered', () => {
  it('stays with UTF-16 positions, whatever the client would rather have', async () => {
    const client = await connect({ capabilities: { general: { positionEncodings: ['utf-8'] } } });
    expect(client.result.capabilities.positionEncoding).toBe('utf-16');
    client.open(PLAN, '\u{1f41a}: !error x\n');
    await until(() => client.published.length > 0);
    expect(client.last(PLAN)?.diagnostics[0]?.range).toEqual(at(0, 4, 12));
  });

  it('is incremental text, and folders only where the client has them', async () => {
    const bare = await connect();
    expect(bare.result.capabilities.textDocumentSync).toMatchObject({ openClose: true, change: 2 });
    expect(bare.result.capabilities.workspace).toBeUndefined();
    const able = await connect({ capabilities: { workspace: { workspaceFolders: true } } });
    expect(able.result.capabilities.workspace).toEqual({
      workspaceFolders: { supported: true, changeNotifications: true },
    });
  });

  it('works for an unsaved text, which has no folder', async () => {
    const client = await connect();
    client.open('untitled:Untitled-1', 'use: kit.shootplan.yaml\na: !error x\n');
    await until(() => client.last('untitled:Untitled-1')?.diagnostics.length === 1);
    expect(client.coreOptions.rootOf(`${ROOT}/x`)).toBe(ROOT);
  });
});
