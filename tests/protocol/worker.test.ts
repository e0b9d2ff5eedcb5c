/**
 * The server of the web extension as it is shipped, in a context that has what a browser's worker
 * has and nothing else: no Node, and no way to make code out of text.
 */
import { createContext, Script } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { messageOf } from '../../shared/api/located.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { bundled } from './support/bundle.ts';

const server = bundled('server/browser.ts', 'browser');

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

interface Published {
  readonly uri: string;
  readonly version: number;
  readonly diagnostics: readonly { code: string; message: string; range: unknown }[];
}

/** Starts the bundle as a worker is started; `send` and `next` are the page's ends of it. */
function startWorker(code: string) {
  const said: Message[] = [];
  const waiting: { wants: (message: Message) => boolean; take: (message: Message) => void }[] = [];
  const self: Record<string, unknown> = {
    onmessage: null,
    addEventListener: () => undefined,
    postMessage: (posted: Message) => {
      const message = structuredClone(posted);
      const index = waiting.findIndex(({ wants }) => wants(message));
      if (index < 0) said.push(message);
      else waiting.splice(index, 1)[0]!.take(message);
    },
    // What a worker has beside the language itself, as far as the server may use it.
    performance,
    setTimeout,
    clearTimeout,
    queueMicrotask,
    MessageChannel,
    TextDecoder,
    TextEncoder,
    URL,
    console,
  };
  self.self = self;
  const context = createContext(self, { codeGeneration: { strings: false, wasm: false } });
  new Script(code, { filename: 'server.browser.js' }).runInContext(context);
  const next = (wants: (message: Message) => boolean) =>
    new Promise<Message>((take) => {
      const index = said.findIndex(wants);
      if (index < 0) waiting.push({ wants, take });
      else take(said.splice(index, 1)[0]!);
    });
  return {
    context,
    send: (message: object) => {
      const data = structuredClone({ jsonrpc: '2.0', ...message });
      (self.onmessage as (event: { data: object }) => void)({ data });
    },
    next,
    findings: async (version: number) => {
      const sent = (message: Message) =>
        message.method === 'textDocument/publishDiagnostics' &&
        (message.params as Published).version === version;
      return ((await next(sent)).params as Published).diagnostics;
    },
  };
}

const heard = (text: string) =>
  coreWith(text)
    .findings(PLAN)
    .map((finding) => ({
      code: finding.rule,
      message: messageOf(finding),
      range: finding.range,
    }));

const toldBy = (diagnostics: Published['diagnostics']) =>
  diagnostics.map(({ code, message, range }) => ({ code, message, range }));

describe('the server in a worker', () => {
  it('can make no code out of text, where this is tested', () => {
    const { context } = startWorker('');
    for (const code of ['eval("1")', 'new Function("return 1")()'])
      expect(() => new Script(code).runInContext(context), code).toThrow(/Code generation/);
    expect(new Script('typeof process + typeof require').runInContext(context)).toBe(
      'undefinedundefined',
    );
  });

  it('says the same as the core does, of a text opened and of one typed in', async () => {
    const worker = startWorker(server.text);
    worker.send({
      id: 1,
      method: 'initialize',
      params: { processId: null, rootUri: null, workspaceFolders: null, capabilities: {} },
    });
    expect((await worker.next(({ id }) => id === 1)).result).toMatchObject({
      serverInfo: { name: 'Lamella' },
    });
    worker.send({ method: 'initialized', params: {} });

    const dark = EXAMPLE_PLAN.replace('iso: 1250', 'iso: 125');
    expect(dark).not.toBe(EXAMPLE_PLAN);
    const opened = worker.findings(1);
    worker.send({
      method: 'textDocument/didOpen',
      params: { textDocument: { uri: PLAN, languageId: 'shootplan', version: 1, text: dark } },
    });
    const first = toldBy(await opened);
    expect(first).toEqual(heard(dark));
    expect(first.map(({ code }) => code)).toContain('exposure-off');

    const broken = dark.replace('aperture: f/8', 'aperture: "f/8');
    expect(broken).not.toBe(dark);
    const typed = worker.findings(2);
    worker.send({
      method: 'textDocument/didChange',
      params: { textDocument: { uri: PLAN, version: 2 }, contentChanges: [{ text: broken }] },
    });
    const second = toldBy(await typed);
    expect(second).toEqual(heard(broken));
    expect(second).not.toEqual(first);
  });
});
