/** Files that are dropped onto a plan, and where they are written. */
import { expect, it } from 'vitest';
import type { DropClipsAnswer } from '../../server/handlers/drop-clips.ts';
import { createCore } from '../../shared/core/core.ts';
import { applied } from '../support/plans.ts';
import { connect, PLAN, ROOT } from './support/client.ts';

const TEXT = `shootplan: 1
clips:
  drift:
    - { file: media/0007.mp4, verdict: keep } # the best
    - take: 2
  frost: [{ file: b.mov }] # later
  none:
  words: many

shots:
  drift: { subject: skin }
`;

async function opened() {
  const client = await connect({ createCore });
  client.open(PLAN, TEXT);
  return async (line: string, ...names: string[]) => {
    const answer = await client.connection.sendRequest<DropClipsAnswer>('lamella/dropClips', {
      textDocument: { uri: PLAN },
      position: { line: TEXT.split('\n').indexOf(line), character: 3 },
      uris: names.map((name) => (name.includes(':') ? name : `${ROOT}/${name}`)),
    });
    const edits = answer.edits.map(({ range, newText }) => ({ range, text: newText }));
    return { text: applied(TEXT, edits), why: answer.why };
  };
}

const DRIFT = '    - { file: media/0007.mp4, verdict: keep } # the best\n    - take: 2\n';

it('lists them in their order at the end of the shot’s clips, by paths from the plan', async () => {
  const drop = await opened();
  for (const line of ['  drift:', '    - take: 2'])
    expect(await drop(line, 'media/0009.mp4', 'card%20a/take%3A%201.mov')).toEqual({
      text: TEXT.replace(
        DRIFT,
        `${DRIFT}    - { file: media/0009.mp4 }\n    - { file: 'card a/take: 1.mov' }\n`,
      ),
    });
  expect(await drop('  frost: [{ file: b.mov }] # later', '0001.mp4', 'c.mov')).toEqual({
    text: TEXT.replace('b.mov }]', 'b.mov }, { file: 0001.mp4 }, { file: c.mov }]'),
  });
  expect(await drop('  none:', 'a.mp4', 'c.mp4')).toEqual({
    text: TEXT.replace('none:', 'none: [{ file: a.mp4 }, { file: c.mp4 }]'),
  });
});

it('writes nothing anywhere else, nor what is listed or outside the workspace', async () => {
  const drop = await opened();
  const nothing = { text: TEXT, why: 'Drop clips onto a shot below `clips`.' };
  for (const line of ['shootplan: 1', 'shots:', '  drift: { subject: skin }', 'clips:'])
    expect(await drop(line, 'a.mp4')).toEqual(nothing);
  expect((await drop('  words: many', 'a.mp4')).text).toBe(TEXT);
  expect(await drop('  drift:', 'media/0007.mp4', 'b.mov')).toEqual({
    text: TEXT,
    why: 'Clips that the plan lists already were left out.',
  });
  expect(await drop('  drift:', 'file:///elsewhere/a.mp4', 'memfs:/a.mp4', 'a.mp4')).toEqual({
    text: TEXT.replace(DRIFT, `${DRIFT}    - { file: a.mp4 }\n`),
    why: 'Clips outside the workspace were left out.',
  });
});
