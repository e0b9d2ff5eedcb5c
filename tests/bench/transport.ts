/** The shipped server, and the general YAML server on the same text with our schema, over stdio. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { SERVER_FLAGS } from '../../client/server-flags.ts';
import { type Answered, change, connect, open } from './language-client.ts';
import { lineOf, planOf, TOO_BRIGHT, WELL_EXPOSED } from './plan-of.ts';
import { type Spread, spread } from './statistics.ts';

const ROOT = process.cwd();
/** As the extension starts it, but over stdio. */
const OURS = [
  process.execPath,
  ...SERVER_FLAGS,
  path.join(ROOT, 'dist/lamella-language-server.cjs'),
  '--stdio',
];
/** What the general server waits after a keystroke before it looks: shown apart. */
export const GENERAL_DELAY_MS = 200;

/** Fetched into the cache for the bench alone; no dependency of the project. */
export function generalServer(): readonly string[] | null {
  const home = path.join(ROOT, '.cache/bench');
  const main = path.join(home, 'node_modules/yaml-language-server/bin/yaml-language-server');
  if (!existsSync(main)) {
    mkdirSync(home, { recursive: true });
    try {
      execFileSync(
        'npm',
        [
          'install',
          '--prefix',
          home,
          '--no-audit',
          '--no-fund',
          '--silent',
          'yaml-language-server@1.18.0',
        ],
        { stdio: 'ignore' },
      );
    } catch {
      return null;
    }
  }
  return [process.execPath, main, '--stdio'];
}

const generalSettings = (section: string | undefined): unknown =>
  section === 'yaml'
    ? {
        validate: true,
        schemas: {
          [pathToFileURL(path.join(ROOT, 'schemas/shootplan.schema.json')).href]:
            '*.shootplan.yaml',
        },
      }
    : null;

/** Edits before those that count: the first ones of a process are for its compiler. */
const WARM_UP = 50;

export interface TransportResult {
  /** The first edits after opening. */
  readonly early: Spread;
  /** Those after them. */
  readonly edit: Spread;
  readonly burst: Spread;
  readonly hover: Spread;
}

/** From nothing, and from a text sent to a server that is there, to its findings. */
export interface Opening {
  readonly spawn: Spread;
  readonly open: Spread;
}

interface Server {
  readonly languageId: string;
  start(): Promise<Answered>;
}

const ours: Server = { languageId: 'shootplan', start: () => connect(OURS, () => null) };
const generalBy = (command: readonly string[]): Server => ({
  languageId: 'yaml',
  start: () => connect(command, generalSettings),
});

const OPENINGS = 7;

/** Both servers started anew each time, in turns: what else the machine does weighs on both. */
export async function benchOpenings(
  shots: number,
  general: readonly string[] | null,
): Promise<{ readonly ours: Opening; readonly general: Opening | null }> {
  const text = planOf(shots);
  const servers = [ours, ...(general ? [generalBy(general)] : [])];
  const times = servers.map(() => ({ spawn: [] as number[], open: [] as number[] }));
  for (let round = 0; round < OPENINGS; round++)
    for (const [index, { languageId, start }] of servers.entries()) {
      const began = performance.now();
      const server = await start();
      const waited = server.nextFindings();
      const sent = performance.now();
      await open(server, text, languageId);
      await waited;
      times[index]!.spawn.push(performance.now() - began);
      times[index]!.open.push(performance.now() - sent);
      server.stop();
    }
  const [first, second] = times.map((each) => ({
    spawn: spread(each.spawn),
    open: spread(each.open),
  }));
  return { ours: first!, general: second ?? null };
}

const pause = (time: number) => new Promise((resolve) => setTimeout(resolve, time));

async function measure(
  shots: number,
  { languageId, start }: Server,
  edits: number,
): Promise<TransportResult> {
  const text = planOf(shots);
  const server = await start();
  try {
    let waited = server.nextFindings();
    await open(server, text, languageId);
    await waited;
    const line = lineOf(text, Math.floor(shots / 2), 'iso');
    let version = 1;
    let length = String(WELL_EXPOSED).length;
    if (Math.floor(shots / 2) % 10 === 0) length = String(TOO_BRIGHT).length;
    const type = async (value: string) => {
      await change(server, ++version, line, 9, 9 + length, value);
      length = value.length;
    };
    const times: number[] = [];
    const early: number[] = [];
    const warmUp = Math.min(WARM_UP, edits);
    for (let round = 0; round < warmUp + edits; round++) {
      waited = server.nextFindings();
      const start = performance.now();
      await type(String(round % 2 ? WELL_EXPOSED : TOO_BRIGHT));
      await waited;
      (round < warmUp ? early : times).push(performance.now() - start);
    }
    const bursts: number[] = [];
    for (let round = 0; round < 3; round++) {
      for (let key = 0; key < 19; key++) {
        await type(String(100 + key));
        await pause(40);
      }
      waited = server.nextFindings();
      const start = performance.now();
      await type(String(round % 2 ? WELL_EXPOSED : TOO_BRIGHT));
      await waited;
      bursts.push(performance.now() - start);
    }
    const hovers: number[] = [];
    for (let round = 0; round < edits; round++) {
      const start = performance.now();
      await type(String(round % 2 ? WELL_EXPOSED : TOO_BRIGHT));
      await server.connection.sendRequest('textDocument/hover', {
        textDocument: { uri: 'file:///w/plan.shootplan.yaml' },
        position: { line: line - 2, character: 16 },
      });
      hovers.push(performance.now() - start);
    }
    return {
      early: spread(early),
      edit: spread(times),
      burst: spread(bursts),
      hover: spread(hovers),
    };
  } finally {
    server.stop();
  }
}

export const benchOurs = (shots: number): Promise<TransportResult> => measure(shots, ours, 200);

export const benchGeneral = (shots: number, command: readonly string[]): Promise<TransportResult> =>
  measure(shots, generalBy(command), shots >= 1000 ? 5 : 10);
