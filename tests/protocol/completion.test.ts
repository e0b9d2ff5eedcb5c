/** Completion over a real connection, with the core as it is. */
import { describe, expect, it, vi } from 'vitest';
import type { CompletionItem, CompletionList, InitializeParams } from 'vscode-languageserver';
import { planTemplate } from '../../shared/assist/template.ts';
import { createCore } from '../../shared/core/core.ts';
import { connect, PLAN, ROOT } from './support/client.ts';

type Client = Awaited<ReturnType<typeof connect>>;

const RICH: InitializeParams['capabilities'] = {
  textDocument: {
    completion: {
      completionItem: {
        snippetSupport: true,
        preselectSupport: true,
        labelDetailsSupport: true,
        documentationFormat: ['markdown', 'plaintext'],
        insertTextModeSupport: { valueSet: [1, 2] },
      },
    },
  },
};

/** What is offered in the new plan where `text` is taken out. */
const offered = async (client: Client, text: string): Promise<CompletionList> => {
  const plan = planTemplate();
  const at = plan.lastIndexOf(text);
  const left = plan.slice(0, at) + plan.slice(at + text.length);
  const lines = plan.slice(0, at).split('\n');
  client.open(PLAN, left);
  return client.connection.sendRequest('textDocument/completion', {
    textDocument: { uri: PLAN },
    position: { line: lines.length - 1, character: lines.at(-1)!.length },
  });
};

/** What is offered in the new plan once somebody has taken `text` out of it there. */
const offeredAfter = async (client: Client, text: string): Promise<CompletionList> => {
  const plan = planTemplate();
  const at = plan.lastIndexOf(text);
  const lines = plan.slice(0, at).split('\n');
  const start = { line: lines.length - 1, character: lines.at(-1)!.length };
  const end = { ...start, character: start.character + text.length };
  client.open(PLAN, plan);
  client.change(PLAN, 2, [{ range: { start, end }, text: '' }]);
  return client.connection.sendRequest('textDocument/completion', {
    textDocument: { uri: PLAN },
    position: start,
  });
};

const itemOf = (list: CompletionList, label: string): CompletionItem => {
  const item = list.items.find((each) => each.label === label);
  expect(item, list.items.map((each) => each.label).join(', ')).toBeDefined();
  return item!;
};

const resolve = (client: Client, item: CompletionItem): Promise<CompletionItem> =>
  client.connection.sendRequest('completionItem/resolve', item);

describe('a client that can do all of it', () => {
  const rich = () =>
    connect({ capabilities: RICH, createCore, initializationOptions: { asksAgain: true } });

  it('is offered what was taken out as it was, with what it comes to', async () => {
    const client = await rich();
    const fresh = itemOf(await offered(client, 'f/8'), 'f/8');
    const list = await offeredAfter(await rich(), 'f/8');
    const item = itemOf(list, 'f/8');
    expect(item.detail).toBe(`previous value · ${fresh.detail}`);
    expect(
      list.items.filter(({ labelDetails }) =>
        /previous value/.test(labelDetails?.description ?? ''),
      ),
    ).toEqual([item]);
  });

  it('is told what each value comes to, with the best chosen already', async () => {
    const client = await rich();
    const list = await offered(client, 'f/8');
    const item = itemOf(list, 'f/8');
    expect(item.labelDetails?.description).toMatch(/^f\/14 · DOF .*, needs 1 mm$/);
    expect(item.detail).toMatch(/^f\/14 · DOF .*, needs 1 mm · /);
    expect(list.items.filter(({ preselect }) => preselect)).toHaveLength(1);
    expect(item).toMatchObject({ insertTextFormat: 1, insertTextMode: 1, filterText: 'f/8' });
    expect(item.documentation).toBeUndefined();
    const { documentation } = await resolve(client, item);
    expect(documentation).toMatchObject({ kind: 'markdown' });
    expect((documentation as { value: string }).value).toContain(
      'Effective: **f/14** (12 to 14) at the sensor',
    );
  });

  it('finds numbers by their value, and details that fit a narrow list', async () => {
    const { items } = await offered(await rich(), 'f/8');
    const sorted = [...items].sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
    const stops = sorted.map(({ label }) => Number(label.replace('f/', '')));
    expect(stops.length).toBeGreaterThan(5);
    expect(stops).toEqual([...stops].sort((a, b) => a - b));
    for (const { labelDetails } of items)
      expect(labelDetails?.description?.length ?? 0).toBeLessThanOrEqual(36);
  });

  it('begins a new plan with fewer than ten places to fill in', async () => {
    const client = await rich();
    client.open(PLAN, '');
    const list = await client.connection.sendRequest<CompletionList>('textDocument/completion', {
      textDocument: { uri: PLAN },
      position: { line: 0, character: 0 },
    });
    const { newText } = itemOf(list, 'new plan').textEdit!;
    const stops = newText.match(/\$\{[0-9]+:/g) ?? [];
    expect(stops.length).toBeGreaterThan(4);
    expect(stops.length).toBeLessThan(10);
  });

  it('gets keys as snippets that ask for their value at once', async () => {
    const client = await rich();
    const list = await offered(client, 'iso: 3200');
    const item = itemOf(list, 'iso');
    expect(item.textEdit).toMatchObject({ newText: expect.stringMatching(/^iso: \$\{1:[0-9]+\}/) });
    expect(item).toMatchObject({
      insertTextFormat: 2,
      command: { command: 'editor.action.triggerSuggest' },
    });
    expect((await resolve(client, item)).documentation).toMatchObject({ kind: 'markdown' });
  });
});

describe('a client that said nothing of itself', () => {
  const bare = () => connect({ createCore });

  it('has what works best first, since it marks nothing', async () => {
    const { items } = await offered(await bare(), 'f/8');
    const first = items.find(({ sortText }) => sortText === '0000');
    expect(first?.label).toBe('f/8');
  });

  it('gets plain text with its defaults, and plain words about it', async () => {
    const client = await bare();
    const item = itemOf(await offered(client, 'iso: 3200'), 'iso');
    expect(item.textEdit).toMatchObject({ newText: expect.stringMatching(/^iso: [0-9]+$/) });
    expect(item).toMatchObject({ insertTextFormat: 1 });
    for (const key of ['command', 'preselect', 'labelDetails', 'insertTextMode'])
      expect(item).not.toHaveProperty(key);
    const { documentation } = await resolve(client, item);
    expect(documentation).toMatchObject({ kind: 'plaintext' });
    expect((documentation as { value: string }).value).not.toMatch(/\*\*|`/);
  });

  it('has the consequence where details are shown', async () => {
    const item = itemOf(await offered(await bare(), 'f/8'), 'f/8');
    expect(item.detail).toMatch(/^f\/14 · DOF/);
  });
});

it('sends an item back as it is where there is nothing to say of it', async () => {
  const client = await connect({ createCore });
  client.open(PLAN, planTemplate());
  const item: CompletionItem = { label: 'not ours' };
  expect(await resolve(client, item)).toEqual(item);
});

describe('files to use', () => {
  const KITS = [`${ROOT}/kits/own.shootplan.yaml`, PLAN];
  const labels = async (client: Client): Promise<string[]> => {
    const list: CompletionList = await client.connection.sendRequest('textDocument/completion', {
      textDocument: { uri: PLAN },
      position: { line: 0, character: 6 },
    });
    return list.items.map(({ label }) => label);
  };

  it('are those that the client says lie in its folders, the plan itself left out', async () => {
    const client = await connect({
      createCore,
      initializationOptions: { listsPlans: true },
      planFiles: () => KITS,
    });
    client.open(PLAN, 'use: []\n');
    await expect.poll(() => labels(client)).toEqual(['kits/own.shootplan.yaml']);
  });

  it('are not asked of a client that does not say that it lists them', async () => {
    const planFiles = vi.fn(() => KITS);
    const client = await connect({ createCore, planFiles });
    client.open(PLAN, 'use: []\n');
    expect(await labels(client)).toEqual([]);
    expect(planFiles).not.toHaveBeenCalled();
  });
});
