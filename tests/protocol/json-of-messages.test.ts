/** Messages put together from what is kept say what JSON.stringify says of them whole. */
import { expect, test } from 'vitest';
import { JsonOfMessages } from '../../server/json-of-messages.ts';

const finding = { message: 'Depth is "0.8" mm.\u2028', code: 'depth-short', tags: undefined };
const MESSAGES: Record<string, object> = {
  'findings sent': {
    jsonrpc: '2.0',
    method: 'textDocument/publishDiagnostics',
    params: { uri: 'file:///w/a.yaml', version: 3, diagnostics: [finding, { message: 'é' }] },
  },
  'no findings': { jsonrpc: '2.0', method: 'm', params: { diagnostics: [] } },
  'findings asked for': { jsonrpc: '2.0', id: 7, result: { kind: 'full', items: [finding] } },
  'a list of texts': { jsonrpc: '2.0', id: 8, result: { items: ['a', null] } },
  'a list of nothing': { jsonrpc: '2.0', id: 9, result: null },
};

test.each(Object.entries(MESSAGES))('%s', (_name, message) => {
  const json = new JsonOfMessages();
  const once = json.of(message);
  expect(JSON.parse(once)).toEqual(JSON.parse(JSON.stringify(message)));
  expect(json.of(message)).toBe(once);
});

test('what a changed list says is new', () => {
  const json = new JsonOfMessages();
  const message = (code: string) => ({ params: { diagnostics: [finding, { code }] } });
  json.of(message('one'));
  expect(json.of(message('two'))).toContain('"code":"two"');
});
