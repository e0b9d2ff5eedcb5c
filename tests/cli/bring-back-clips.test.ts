/** `bring-back --clips`: files of a card, made by ffmpeg, matched to takes by their headers' times. */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { copyClip, makeClip } from '../support/ffmpeg.ts';
import { folderWith, lamella } from './support.ts';

const NAME = 'a.shootplan.yaml';
const PLAN = `shootplan: 1
shots:
  drift:
    aperture: f/16   # sharpest
`;
const time = (minute: string, second: string): string => `2027-03-02T10:${minute}:${second}Z`;
const TAKES = [
  { shot: 'drift', take: 1, at: time('41', '07'), keep: true },
  { shot: 'drift', take: 2, at: time('43', '20'), keep: null },
  { shot: 'drift', take: 3, at: time('48', '02'), keep: false },
];
const DAY = `lamella day 1\n${JSON.stringify({ plan: NAME, saved: time('59', '00'), takes: TAKES })}\n`;

/** Plan, day and a card with four clips. */
function withCard(): string {
  const folder = folderWith({ [NAME]: PLAN, 'day.txt': DAY });
  mkdirSync(path.join(folder, 'card'));
  const first = path.join(folder, 'card', 'C0007.mp4');
  const dated = (name: string, at: string): void =>
    copyClip(first, path.join(folder, 'card', name), '-metadata', `creation_time=${at}`);
  makeClip(first, { seconds: 1 });
  // An hour behind, as bodies are that nobody set to summer time.
  dated('C0008.mp4', '2027-03-02T09:41:09Z');
  dated('C0009.mp4', '2027-03-02T09:43:24Z');
  dated('C0010.mp4', '2027-03-02T09:55:00Z');
  return folder;
}

it('proposes the clips of a card as a part of its own, and tells the rest', async () => {
  const folder = withCard();
  const args = ['bring-back', 'day.txt', NAME, '--clips', 'card'];
  const { status, out, err } = await lamella(folder, args);
  const parts = out.split(/^(?=--- )/m);
  expect(parts).toHaveLength(2);
  expect(parts[1]?.match(/^\+ .*$/gm)).toEqual([
    `+    - { take: 1, time: ${time('41', '07')}, verdict: keep, file: card/C0008.mp4 }`,
    `+    - { take: 2, time: ${time('43', '20')}, file: card/C0009.mp4 }`,
  ]);
  expect(err.split('\n').slice(3)).toEqual([
    'Proposed: Take 1 of drift: card/C0008.mp4, by its time.',
    'Proposed: Take 2 of drift: card/C0009.mp4, by its time.',
    "Proposed: The body's clock is 60 min behind the sheet's.",
    'No time in the header: card/C0007.mp4.',
    'No take at the time of: card/C0010.mp4. Nothing is proposed.',
    'Nothing was written; --write makes the changes.',
    '',
  ]);
  expect(status).toBe(1);
});

it('needs no day, and finds nothing twice', async () => {
  const folder = withCard();
  const day = await lamella(folder, ['bring-back', 'day.txt', NAME, '--write']);
  expect(day.status).toBe(0);
  const args = ['bring-back', NAME, '--clips', 'card', '--write'];
  const first = await lamella(folder, args);
  expect(first.err).toContain(`${NAME} is written.\n`);
  const again = await lamella(folder, args);
  expect([again.out, again.err]).toEqual([
    '',
    'No time in the header: card/C0007.mp4.\nNo take at the time of: card/C0010.mp4. Nothing is proposed.\nNothing to bring back.\n',
  ]);
  const none = await lamella(folder, ['bring-back', NAME, '--clips', 'gone']);
  expect(none.err).toContain('--clips gone: no such folder.');
});
