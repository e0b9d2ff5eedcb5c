/** Frames by the protocol: in hovers and by a request of their own, in slices that hold up nothing. */
import { describe, expect, it } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver';
import type { ClientFeatures } from '../../server/client-features.ts';
import { frameInSlices, shotFrame } from '../../server/handlers/frame.ts';
import { hover } from '../../server/handlers/hover.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { connect } from './support/client.ts';

const GO_ON = { isCancellationRequested: false } as Parameters<typeof frameInSlices>[4];
const STOPPED = { ...GO_ON, isCancellationRequested: true };
const SHOWS = { markdown: true, showsImages: true } as ClientFeatures;

const placeOf = (text: string, needle: string, within: string) => {
  const lines = text.split('\n');
  const first = lines.findIndex((line) => line.startsWith(`  ${within}:`));
  const line = lines.findIndex((one, index) => index > first && one.includes(needle));
  return { line, character: lines[line]!.indexOf(needle) + 1 };
};

const hoverOn = (needle: string, client = SHOWS, token = GO_ON) =>
  hover(coreWith(EXAMPLE_PLAN), client, PLAN, placeOf(EXAMPLE_PLAN, needle, 'skin'), token);

const wordsOf = (found: Hover | null): string => (found!.contents as MarkupContent).value;

describe('a hover', () => {
  it('shows the frame of a tilt and of a subject, with its caption', async () => {
    for (const needle of ['tilt', 'subject']) {
      const value = wordsOf(await hoverOn(needle));
      expect(value).toMatch(
        /!\[The frame as traced from the plan\]\(data:image\/png;base64,iVBORw0KGgo/,
      );
      expect(value).toContain('Traced from the plan, not a photograph.');
    }
  });

  it('draws the tilt window and says the same in words', async () => {
    const value = wordsOf(await hoverOn('tilt'));
    const [, alt, data] = /!\[(Tilt window [^\]]+)\]\(data:image\/svg\+xml;base64,([^)]+)\)/.exec(
      value,
    )!;
    const svg = atob(data!);
    expect(svg).toMatch(/^<svg [\s\S]*<\/svg>$/);
    const ends = /(\S+)° to (\S+)°/.exec(alt!)!;
    expect(svg).toContain(`${ends[1]}&#176; to ${ends[2]}&#176;`);
    // The tilt is inside of the window, and its line inside of the bar.
    const bar = /<rect x="([\d.]+)" y="8" width="([\d.]+)"/.exec(svg)!.slice(1).map(Number);
    const line = Number(/<path d="M([\d.]+) /.exec(svg)![1]);
    expect(line).toBeGreaterThan(bar[0]!);
    expect(line).toBeLessThan(bar[0]! + bar[1]!);
  });

  it('has no picture on other keys, nor for clients that show none', async () => {
    expect(wordsOf(await hoverOn('aperture'))).not.toContain('data:');
    expect(wordsOf(await hoverOn('tilt', { ...SHOWS, showsImages: false }))).not.toContain('data:');
    const plain = await hoverOn('tilt', { ...SHOWS, markdown: false });
    expect(plain!.contents).toMatchObject({ kind: 'plaintext' });
    expect(wordsOf(plain)).not.toContain('data:');
  });

  it('keeps its words where the picture was cancelled', async () => {
    const value = wordsOf(await hoverOn('tilt', SHOWS, STOPPED));
    expect(value).not.toContain('data:image/png');
    expect(value.length).toBeGreaterThan(20);
  });
});

describe('lamella/frame', () => {
  const textDocument = { uri: PLAN };

  it('answers with a picture for a page, drawn in slices', async () => {
    const client = await connect();
    client.open(PLAN, 'shot: drift\n');
    const ask = (shot: string) =>
      client.connection.sendRequest('lamella/frame', { textDocument, shot, width: 7 });
    expect(await ask('drift')).toEqual({
      width: 7,
      height: 9,
      src: 'data:image/png;base64,BwID',
      caption: ['Traced from *the* plan.'],
    });
    expect(await ask('nothing')).toBeNull();
  });

  it('draws the same in slices as at once, and keeps it until the figures are others', async () => {
    const core = coreWith(EXAMPLE_PLAN);
    const making = core.startFrame(PLAN, 'skin', 32)!;
    let slices = 0;
    let drawn = making.work(() => true);
    for (; drawn === null; slices += 1) drawn = making.work(() => true);
    expect(slices).toBeGreaterThan(10);
    expect(drawn).toEqual(coreWith(EXAMPLE_PLAN).frame(PLAN, 'skin', 32));
    expect(core.frame(PLAN, 'skin', 32)).toBe(drawn);
    core.give(PLAN, EXAMPLE_PLAN.replace('tilt: 4 deg', 'tilt: 25 deg'));
    expect(core.frame(PLAN, 'skin', 32)).not.toEqual(drawn);
  });

  it('is nothing where the shot is missing, or it was cancelled', async () => {
    const core = createCore({ rootOf: () => 'file:///w' });
    core.give(PLAN, EXAMPLE_PLAN);
    expect(await shotFrame(core, PLAN, { textDocument, shot: 'none' }, GO_ON)).toBeNull();
    expect(
      await shotFrame(core, PLAN, { textDocument, shot: 'skin', width: 400 }, STOPPED),
    ).toBeNull();
    expect(await frameInSlices(core, PLAN, 'skin', 16, GO_ON)).toMatchObject({
      ok: true,
      width: 16,
    });
  });
});
