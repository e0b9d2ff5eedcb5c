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
const WARM_UP = 20;

export interface TransportResult {
  readonly shots: number;
  readonly spawn: number;
  readonly open: number;
  /** The first edits after opening. */
  readonly early: Spread;
  /** Those after them. */
  readonly edit: Spread;
  readonly burst: Spread;
  readonly hover: Spread;
}

const pause = (time: number) => new Promise((resolve) => setTimeout(resolve, time));

async function measure(
  shots: number,
  languageId: string,
  start: () => Promise<Answered>,
  edits: number,
): Promise<TransportResult> {
  const text = planOf(shots);
  const began = performance.now();
  const server = await start();
  try {
    let waited = server.nextFindings();
    const sent = performance.now();
    await open(server, text, languageId);
    await waited;
    const first = performance.now();
    const line = lineOf(text, Math.floor(shots / 2), 'iso');
    let version = 1;
    let length = String(WELL_EXPOSED).length;
    if (Math.floor(shots / 2) % 10 === 0) length = String(TOO_BRIGHT).length;
    const type = async (value: string) => {
      await change(server, ++version, line, 9, 9 + length, value);
      length = value.length;
    };
    const times: number[] = [];
    const first20: number[] = [];
    const warmUp = Math.min(WARM_UP, edits);
    for (let round = 0; round < warmUp + edits; round++) {
      waited = server.nextFindings();
      const start = performance.now();
      await type(String(round % 2 ? WELL_EXPOSED : TOO_BRIGHT));
      await waited;
      (round < warmUp ? first20 : times).push(performance.now() - start);
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
      shots,
      spawn: first - began,
      open: first - sent,
      early: spread(first20),
      edit: spread(times),
      burst: spread(bursts),
      hover: spread(hovers),
    };
  } finally {
    server.stop();
  }
}

export const benchOurs = (shots: number): Promise<TransportResult> =>
  measure(shots, 'shootplan', () => connect(OURS, () => null), 60);

export const benchGeneral = (shots: number, command: readonly string[]): Promise<TransportResult> =>
  measure(shots, 'yaml', () => connect(command, generalSettings), shots >= 1000 ? 5 : 10);
