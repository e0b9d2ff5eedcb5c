/** A client or a plan that means harm: what the server answers is plain words, and nothing in them acts. */
import { spawn } from 'node:child_process';
import { expect, it, onTestFinished } from 'vitest';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { bundled } from './support/bundle.ts';
import { connect, PLAN } from './support/client.ts';

const server = bundled('server/node.ts');
const SOUND = { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null };

it('refuses an initialize that it can not read, and takes the next one', async () => {
  const child = spawn(process.execPath, [server.file, '--stdio']);
  onTestFinished(() => void child.kill());
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
    undefined,
  );
  connection.listen();
  // LSP 3.17, "initialize": what each must be.
  for (const [wrong, why] of [
    [{ ...SOUND, capabilities: null }, 'initialize needs `capabilities` as an object'],
    [{ ...SOUND, capabilities: [] }, 'initialize needs `capabilities` as an object'],
    [{ ...SOUND, capabilities: { textDocument: 7 } }, '`capabilities.textDocument` must be'],
    [
      { ...SOUND, capabilities: { textDocument: { hover: { contentFormat: 7 } } } },
      '`capabilities` has a value of the wrong kind',
    ],
    [{ ...SOUND, rootUri: 7 }, '`rootUri` must be'],
    [{ ...SOUND, workspaceFolders: [null] }, '`workspaceFolders` must be a list'],
    [{ ...SOUND, workspaceFolders: 'file:///a' }, '`workspaceFolders` must be a list'],
    [[1, 2], 'initialize needs its parameters as an object'],
    [undefined, 'initialize needs its parameters as an object'],
  ] as const) {
    const said = await connection.sendRequest('initialize', wrong).then(
      () => 'taken',
      (error: Error) => error.message,
    );
    expect(said).toContain(why);
    expect(said).not.toMatch(/undefined|reading|TypeError|failed/);
  }
  expect(await connection.sendRequest('initialize', SOUND)).toHaveProperty('capabilities');
  connection.dispose();
});

/** Unicode, UAX 9, table 4, and ECMA-48. Breaks are Markdown's. */
const ACTIVE = /(?![\n])[\p{Cc}\p{Bidi_Control}\u2028\u2029]/u;

/** Every text that is shown, by its way; what is written into the plan is data. */
function* shown(value: unknown, way = ''): Generator<[string, string]> {
  if (typeof value === 'string') yield [way, value];
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value))
      if (!/^(newText|text|uri|data|changes|arguments|filterText|sortText|insertText)$/.test(key))
        yield* shown(inner, `${way}/${key}`);
}

it('says nothing that acts, whatever the plan holds', async () => {
  const acts = String.raw`\e[31m\0\x9b2J\u202e\u2066\b\r`;
  const raw = '\u202e\u2066\u001b[31m';
  const text = `${EXAMPLE_PLAN.replace(/^title:.*$/m, `title: "${acts}"`)}
clips:
  skin:
    - { file: "x${acts}\\0.mov", take: 1 }
  "s${acts}":
    - { file: "y", take: 1 }
edit:
  rate: 25 fps
  cuts:
    one: { shot: "sk${acts}", duration: "1${acts}", about: "=1${acts}" }
use: ["${acts}.shootplan.yaml", "a\\0.shootplan.yaml"]
nonsense${raw}: "${acts}"
severity: { "${acts}": hint }
`.replace('rig: near', `rig: "ne${acts}"`);
  const markdown = { documentationFormat: ['markdown' as const], snippetSupport: true };
  const client = await connect({
    createCore,
    disk: new Map(),
    initializationOptions: { sheets: true, solving: true },
    capabilities: {
      textDocument: {
        diagnostic: { relatedDocumentSupport: true },
        publishDiagnostics: { relatedInformation: true },
        hover: { contentFormat: ['markdown'] },
        completion: { completionItem: markdown },
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      },
    },
  });
  client.open(PLAN, text);
  const textDocument = { uri: PLAN };
  const lines = text.split('\n');
  const range = { start: { line: 0, character: 0 }, end: { line: lines.length - 1, character: 0 } };
  const answers: unknown[] = [await client.pull(PLAN)];
  const ask = async (method: string, more: object = {}) => {
    const answer = await client.connection
      .sendRequest(method, { textDocument, ...more })
      .catch((error: Error) => ({ refused: error.message }));
    answers.push(answer);
    return answer;
  };
  for (const method of ['documentSymbol', 'codeLens', 'documentLink', 'foldingRange'])
    await ask(`textDocument/${method}`);
  await ask('textDocument/inlayHint', { range });
  await ask('textDocument/codeAction', { range, context: { diagnostics: [] } });
  await ask('lamella/timeline', { format: 'otio' });
  for (const lens of (await ask('textDocument/codeLens')) as object[])
    answers.push(await client.connection.sendRequest('codeLens/resolve', lens));
  for (const [line, written] of lines.entries()) {
    if (!/\\e|\u202e|skin|rig/.test(written)) continue;
    for (const character of [4, written.indexOf(':') + 4]) {
      const position = { line, character };
      await ask('textDocument/hover', { position });
      await ask('textDocument/completion', { position });
      await ask('textDocument/rename', { position, newName: raw });
    }
  }
  answers.push(client.logged, client.published);
  const found = [...shown(answers)].filter(([, said]) => ACTIVE.test(said));
  expect(found.map(([way, said]) => [way, JSON.stringify(said)])).toEqual([]);
  expect(answers.length).toBeGreaterThan(20);
});
