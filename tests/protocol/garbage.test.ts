/** Messages that break the protocol: none takes the others with it, and no text is told that isn't there. */
import { expect, it } from 'vitest';
import { createCore } from '../../shared/core/core.ts';
import { connect, PLAN, quiet } from './support/client.ts';

const TEXT = 'shootplan: 1\nshots:\n  a:\n    fild: 3 mm\n';

it('a text opened without an address or a text leaves the others be', async () => {
  const client = await connect({ createCore });
  const send = (params: unknown) =>
    client.connection.sendNotification('textDocument/didOpen', params as object);
  for (const textDocument of [
    {},
    { uri: 5, text: TEXT },
    { uri: 'file:///plans/b.shootplan.yaml' },
  ])
    await send({ textDocument });
  client.open(PLAN, TEXT);
  await quiet(client);
  expect(client.last(PLAN)?.diagnostics.length).toBeGreaterThan(0);
});

it.each([
  ['without a text', [{}]],
  ['with a text that is a number', [{ text: 5 }]],
  ['that is nothing', [null]],
  [
    'within the text, without one',
    [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } }],
  ],
])('a change %s is told as a text that was lost, until it comes whole', async (_, changes) => {
  const client = await connect({ createCore });
  client.open(PLAN, TEXT);
  client.change(PLAN, 2, changes as never);
  await quiet(client);
  expect(client.last(PLAN)?.diagnostics.map(({ code }) => code)).toEqual(['rule-failed']);
  client.change(PLAN, 3, [{ text: TEXT }]);
  await quiet(client);
  expect(client.core.text(PLAN)).toBe(TEXT);
  expect(client.last(PLAN)?.diagnostics.map(({ code }) => code)).toContain('unknown-key');
});

it.each([
  { textDocument: null, workspace: null },
  { textDocument: { diagnostic: null, completion: null }, workspace: { diagnostics: null } },
])(
  'a client that writes null for what it does not have, %j, is sent its findings',
  async (capabilities) => {
    const client = await connect({ createCore, capabilities: capabilities as never });
    client.open(PLAN, TEXT);
    await quiet(client);
    expect(client.last(PLAN)?.diagnostics.map(({ code }) => code)).toContain('unknown-key');
  },
);
