/**
 * One value retyped for as long as a session lasts: what the server says of the text is what it says of
 * it when it is opened afresh, whether it is asked or tells of itself. Shots that are wrong never come
 * to look clean.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { positionAt } from '../laws/canonical.ts';
import { connect, PLAN, PULLS, until } from './support/client.ts';

const SAMPLE = readFileSync(
  path.join(import.meta.dirname, '../../samples/salt-garden.shootplan.yaml'),
  'utf8',
);
/** Edits of one value; the sixty-second was the first to go wrong. */
const EDITS = 90;
const TYPED = ['f/4', 'f/16', 'f/2.8', 'f/11'];
const [WRITTEN] = /(?<=\n {4}aperture: )\S+/.exec(SAMPLE)!;
const AT = SAMPLE.search(/(?<=\n {4}aperture: )\S/);

const withAperture = (value: string): string =>
  SAMPLE.slice(0, AT) + value + SAMPLE.slice(AT + WRITTEN.length);

type Client = Awaited<ReturnType<typeof connect>>;
type Asks = (client: Client, version: number) => Promise<readonly Diagnostic[]>;

async function findingsAfresh(value: string, asks: Asks, pulls: boolean) {
  const client = await connected(pulls);
  client.open(PLAN, withAperture(value), 1);
  return asks(client, 1);
}

const connected = (pulls: boolean): Promise<Client> =>
  connect({ ...(pulls && { capabilities: PULLS }), createCore }) as unknown as Promise<Client>;

const told: Asks = async (client, version) => {
  await until(() => client.last(PLAN)?.version === version);
  return client.last(PLAN)!.diagnostics;
};

const asked: Asks = (client) => client.pull(PLAN);

it.each([
  ['told', told, false],
  ['asked', asked, true],
] as const)(
  'a client that is %s hears of each edit what it would afresh',
  async (_, asks, pulls) => {
    const afresh = new Map<string, readonly Diagnostic[]>();
    for (const value of TYPED) afresh.set(value, await findingsAfresh(value, asks, pulls));
    expect(afresh.get('f/4')).not.toEqual(afresh.get('f/16'));

    const client = await connected(pulls);
    client.open(PLAN, SAMPLE, 1);
    let length = WRITTEN.length;
    for (let edit = 0; edit < EDITS; edit++) {
      const value = TYPED[edit % TYPED.length]!;
      const start = positionAt(SAMPLE, AT);
      const range = { start, end: { ...start, character: start.character + length } };
      client.change(PLAN, edit + 2, [{ range, text: value }]);
      length = value.length;
      expect(await asks(client, edit + 2), `edit ${edit + 1}, ${value}`).toEqual(afresh.get(value));
    }
  },
  60_000,
);
