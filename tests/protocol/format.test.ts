/** Formatting as editors ask for it. */
import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createCore } from '../../shared/core/core.ts';
import { at, connect, PLAN } from './support/client.ts';

const ROUGH = 'shots:\n    a: {iso:  100,field: 1 mm}\n    b: { iso: 12800,  field: 10 mm }   \n';
const TIDY = 'shots:\n  a: { iso: 100, field: 1 mm }\n  b: { iso: 12800, field: 10 mm }\n';
const textDocument = { uri: PLAN };
const options = { tabSize: 8, insertSpaces: false };

async function asked(method: string, text: string, params: object, sent = {}): Promise<string> {
  const client = await connect({ createCore, initializationOptions: sent });
  client.open(PLAN, text);
  const edits = await client.connection.sendRequest<TextEdit[]>(method, {
    textDocument,
    options,
    ...params,
  });
  return TextDocument.applyEdits(TextDocument.create(PLAN, 'shootplan', 1, text), edits);
}

describe('formatting', () => {
  it('lays the document out, whatever blanks the editor would take', async () => {
    expect(await asked('textDocument/formatting', ROUGH, {})).toBe(TIDY);
  });

  it('keeps what was aligned by the setting, or for one request', async () => {
    const kept = TIDY.replace('iso: 100', 'iso:  100').replace('12800, ', '12800,  ');
    const method = 'textDocument/formatting';
    expect(await asked(method, ROUGH, {}, { align: 'keep' })).toBe(kept);
    expect(await asked(method, ROUGH, { options: { ...options, align: 'keep' } })).toBe(kept);
  });

  it('changes the selected lines only, those that end a selection not counted', async () => {
    const range = { start: { line: 1, character: 4 }, end: { line: 2, character: 0 } };
    expect(await asked('textDocument/rangeFormatting', ROUGH, { range })).toBe(
      ROUGH.replace('{iso:  100,field: 1 mm}', '{ iso: 100, field: 1 mm }'),
    );
    expect(range).toEqual(at(1, 4, 0, 2));
  });
});

describe('a line break', () => {
  const columnAfter = async (line: string, rest = ''): Promise<number> => {
    const text = await asked('textDocument/onTypeFormatting', `${line}\n${rest}`, {
      position: { line: 1, character: 0 },
      ch: '\n',
    });
    return /^ */.exec(text.split('\n')[1] ?? '')?.[0].length ?? 0;
  };

  it.each([
    ['  drift:', 4],
    ['  drift:   # the first', 4],
    ['    iso: 100', 4],
    ['    parts: [a, b]', 4],
    ['    parts: [a,', 6],
    ['      - file: a.mp4', 8],
    ['      - focus', 6],
    ['      -', 6],
    ['    about: |', 6],
    ["    about: 'it''s: {'", 4],
  ])('indents below %j', async (line, column) => {
    expect(await columnAfter(line, '           ')).toBe(column);
  });

  it('leaves the line where the one above does not say', async () => {
    expect(await columnAfter('         rate: 25 fps }', '   x: 1')).toBe(3);
    expect(await columnAfter('    ', '   x: 1')).toBe(3);
  });
});
