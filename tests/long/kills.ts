/**
 * The language server killed in mid-edit, again and again: a client that starts it anew and hands it the
 * text as it is now is told the same as one whose server never ended.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createMessageConnection, type MessageConnection } from 'vscode-jsonrpc/node';
import { randomFrom } from '../published/support/random.ts';
import { coreWith, PLAN } from '../support/plans.ts';

export interface KillResult {
  readonly kills: number;
  readonly failures: readonly string[];
}

const WAIT_MS = 20_000;

interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly { readonly code: string }[];
}

/** A client that starts the server again whenever it ends, and keeps the text meanwhile. */
class Client {
  readonly #server: string;
  #process!: ChildProcess;
  #connection!: MessageConnection;
  #published: Published | undefined;
  #tell: (() => void) | undefined;
  #text: string;
  #version = 0;

  constructor(server: string, text: string) {
    this.#server = server;
    this.#text = text;
  }

  get text(): string {
    return this.#text;
  }

  async start(): Promise<void> {
    this.#process = spawn(process.execPath, [this.#server, '--stdio'], {
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    // What is written to a process that was killed is lost, and is no error.
    this.#process.stdin!.on('error', () => {});
    this.#connection = createMessageConnection(this.#process.stdout!, this.#process.stdin!);
    this.#connection.onError(() => {});
    this.#connection.onNotification('textDocument/publishDiagnostics', (params: Published) => {
      if (params.uri !== PLAN) return;
      this.#published = params;
      this.#tell?.();
    });
    this.#connection.listen();
    const capabilities = { textDocument: { publishDiagnostics: { versionSupport: true } } };
    await this.#connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities,
    });
    await this.#connection.sendNotification('initialized', {});
    await this.#connection.sendNotification('textDocument/didOpen', {
      textDocument: {
        uri: PLAN,
        languageId: 'shootplan',
        version: this.#version,
        text: this.#text,
      },
    });
  }

  type(at: number, text: string): void {
    const before = this.#text.slice(0, at).split('\n');
    const place = { line: before.length - 1, character: before.at(-1)!.length };
    this.#text = this.#text.slice(0, at) + text + this.#text.slice(at);
    this.#version++;
    void this.#connection
      .sendNotification('textDocument/didChange', {
        textDocument: { uri: PLAN, version: this.#version },
        contentChanges: [{ range: { start: place, end: place }, text }],
      })
      .catch(() => {});
  }

  async kill(): Promise<void> {
    const ended = once(this.#process, 'exit');
    this.#process.kill('SIGKILL');
    await ended;
    this.#connection.dispose();
  }

  /** The rules that were told of the text as it is now. */
  async told(): Promise<readonly string[]> {
    const until = Date.now() + WAIT_MS;
    while (this.#published?.version !== this.#version) {
      if (Date.now() > until) throw new Error(`nothing was told of version ${this.#version}`);
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, 100);
        this.#tell = () => {
          clearTimeout(timer);
          resolve();
        };
      });
    }
    return this.#published.diagnostics.map(({ code }) => code).sort();
  }
}

export async function killServer(kills: number, server: string, plan: string): Promise<KillResult> {
  const failures: string[] = [];
  const random = randomFrom(kills);
  const client = new Client(server, plan);
  await client.start();
  for (let count = 0; count < kills; count++) {
    // In the middle of a line that is being typed; its last letters are lost on the way.
    const at = client.text.indexOf('\n', (client.text.length * count) / kills) + 1;
    const line = random.pick([`# note ${count}\n`, `tilt: 4,${count} deg\n`, `"${count}\n`]);
    [...line].forEach((letter, index) => {
      client.type(at + index, letter);
    });
    if (count % 2 === 0) await new Promise((resolve) => setTimeout(resolve, count));
    await client.kill();
    await client.start();
    const expected = coreWith(client.text)
      .findings(PLAN)
      .map(({ rule }) => rule)
      .sort();
    const told = await client.told();
    if (JSON.stringify(told) !== JSON.stringify(expected))
      failures.push(`after ${count + 1}: told ${told.join(', ')}; is ${expected.join(', ')}`);
  }
  await client.kill();
  return { kills, failures };
}
