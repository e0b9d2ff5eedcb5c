/** Long requests hold up no typing, and leave off when the client says so. Nothing is judged by a clock. */
import { describe, expect, it } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver';
import type { SolveAnswer } from '../../server/handlers/solve.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { at, connect, PLAN } from './support/client.ts';

const textDocument = { uri: PLAN };
/** Takes many slices to draw. */
const LONG = { textDocument, shot: 'skin', width: 320 };
const ISO = EXAMPLE_PLAN.split('\n').indexOf('    iso: 1250');

async function opened(text = EXAMPLE_PLAN) {
  const client = await connect({ createCore });
  client.open(PLAN, text);
  await expect.poll(() => client.published.length, { timeout: 60_000 }).toBeGreaterThan(0);
  return client;
}

it('findings of a keystroke come before the answer to a long request', async () => {
  const client = await opened();
  const before = client.published.length;
  const came: string[] = [];
  const answer = client.connection
    .sendRequest('lamella/frame', LONG)
    .then(() => came.push('the frame'));
  client.change(PLAN, 2, [{ range: at(ISO, 9, 13), text: '25' }]);
  const findings = expect
    .poll(() => client.published.length, { interval: 1, timeout: 60_000 })
    .toBeGreaterThan(before)
    .then(() => came.push('the findings'));
  await Promise.all([answer, findings]);
  expect(came).toEqual(['the findings', 'the frame']);
});

it('a long request that is cancelled answers so, in a few turns and not at its end', async () => {
  const client = await opened();
  const source = new CancellationTokenSource();
  const answer = client.connection.sendRequest('lamella/frame', LONG, source.token);
  source.cancel();
  await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  // It was left off and not finished: the frame is made anew when it is asked for again.
  const making = client.core.startFrame(PLAN, 'skin', LONG.width);
  expect(making?.work(() => true)).toBeNull();
});

/** A shot that takes many slices to solve. */
const UNLIT = changed(EXAMPLE_PLAN, { 'shots/skin/tilt': '1 deg' });
const solving = { textDocument, shot: 'skin' };

it('a shot is solved behind a keystroke, in the text as it is then', async () => {
  const client = await opened(UNLIT);
  const before = client.published.length;
  const answer = client.connection.sendRequest<SolveAnswer>('lamella/solve', solving);
  const then = answer.then(() => client.published.length);
  // A line more at the top: an edit of the text before would miss its value by one line.
  const line = '# Twice as far\n';
  client.change(PLAN, 2, [{ range: at(0, 0), text: line }]);
  expect(await then).toBeGreaterThan(before);
  const [edit] = (await answer).edit?.changes?.[PLAN] ?? [];
  const tilt = (line + UNLIT).split('\n').indexOf('    tilt: 1 deg');
  expect(edit).toMatchObject({ range: { start: { line: tilt } } });
});

it('solving that is cancelled answers so', async () => {
  const client = await opened(UNLIT);
  const source = new CancellationTokenSource();
  const answer = client.connection.sendRequest('lamella/solve', solving, source.token);
  source.cancel();
  await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
});

it('a shot that a change takes away while it is solved has no answer', async () => {
  const client = await opened(UNLIT);
  const answer = client.connection.sendRequest('lamella/solve', solving);
  client.change(PLAN, 2, [{ text: EXAMPLE_PLAN.slice(0, EXAMPLE_PLAN.indexOf('\nshots:')) }]);
  expect(await answer).toBeNull();
});

describe.each([
  ['lamella/sheet', { textDocument }],
  ['lamella/sheetPage', { textDocument, script: '' }],
  ['lamella/compare', { textDocument, before: { [PLAN]: UNLIT } }],
] as const)('%s', (method, params) => {
  it('comes behind the findings of a keystroke, and leaves off when it is cancelled', async () => {
    const client = await opened();
    const before = client.published.length;
    const answer = client.connection.sendRequest(method, params);
    const then = answer.then(() => client.published.length);
    client.change(PLAN, 2, [{ range: at(ISO, 9, 13), text: '25' }]);
    expect(await then).toBeGreaterThan(before);
    const source = new CancellationTokenSource();
    client.change(PLAN, 3, [{ range: at(ISO, 9, 11), text: '100' }]);
    const other = client.connection.sendRequest(method, params, source.token);
    source.cancel();
    await expect(other).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });
});
