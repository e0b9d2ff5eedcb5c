/** `bring-back`: what is shown, what is written, and what is refused. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, lamella } from './support.ts';

const PLAN = `shootplan: 1
shots:
  drift:
    aperture: f/16   # sharpest
`;
const NAME = 'a.shootplan.yaml';
const AT = '2027-03-02T10:41:07Z';
const TAKE = { shot: 'drift', take: 1, at: AT, clip: '0007.mp4', keep: true };
const dayText = (document: unknown): string => `lamella day 1\n${JSON.stringify(document)}\n`;
const DAY = dayText({ plan: NAME, saved: AT, takes: [TAKE] });

describe('bring-back', () => {
  it('prints a diff and writes nothing', async () => {
    const folder = folderWith({ [NAME]: PLAN, 'day.txt': DAY });
    const { status, out, err } = await lamella(folder, ['bring-back', 'day.txt', NAME]);
    expect(out).toBe(`--- a/${NAME}
+++ b/${NAME}
@@ -1,4 +1,8 @@
 shootplan: 1
 shots:
   drift:
     aperture: f/16   # sharpest
+
+clips:
+  drift:
+    - { file: '0007.mp4', take: 1, time: ${AT}, verdict: keep }
`);
    expect(err).toBe('Take 1 of drift: added.\nNothing was written; --write makes the changes.\n');
    expect(status).toBe(0);
    expect(readFileSync(path.join(folder, NAME), 'utf8')).toBe(PLAN);
  });

  it('writes once, and then finds nothing to do', async () => {
    const folder = folderWith({ [NAME]: PLAN, 'day.txt': DAY });
    const first = await lamella(folder, ['bring-back', 'day.txt', NAME, '--write']);
    expect(first).toEqual({
      status: 0,
      out: '',
      err: `Take 1 of drift: added.\n${NAME} is written.\n`,
    });
    const again = await lamella(folder, ['bring-back', '-', NAME, '--write'], { input: DAY });
    expect(again).toEqual({ status: 0, out: '', err: 'Nothing to bring back.\n' });
  });

  it('proposes what the day shows as a part of its own, where it is asked to', async () => {
    const plan = `${PLAN}kit:\n  bodies:\n    body-a: { sensor: 36 x 24 mm }\n`;
    const found = { shot: 'drift', at: AT, found: '0.3 stops under', planned: '0 stops over' };
    const exposures = ['panel', 'bulb'].map((light) => ({
      ...{ ...found, body: 'body-a', iso: '400' },
      lights: [light],
    }));
    const folder = folderWith({
      [NAME]: plan,
      'day.txt': dayText({ plan: NAME, saved: AT, takes: [TAKE], exposures }),
    });
    const unasked = await lamella(folder, ['bring-back', 'day.txt', NAME]);
    expect(unasked.out).not.toContain('bench');
    expect(unasked.err).toContain(
      'The day also shows something of body or subject; --propose shows it.\n',
    );
    // One light alone proposes nothing, and is not passed over either.
    const one = folderWith({
      [NAME]: plan,
      'day.txt': dayText({ plan: NAME, saved: AT, exposures: exposures.slice(0, 1) }),
    });
    expect((await lamella(one, ['bring-back', 'day.txt', NAME])).err).toBe(
      'The day also shows something of body or subject; --propose shows it.\nNothing to bring back.\n',
    );
    const { out, err } = await lamella(folder, ['bring-back', 'day.txt', NAME, '--propose']);
    const [first, second, ...more] = out.split(/^(?=--- )/m);
    expect([first, more]).toEqual([unasked.out, []]);
    expect(second).toContain(
      '+    body-a: { sensor: 36 x 24 mm, bench: [{ set: 400, found: 0.3 stops under }] }',
    );
    expect(err).toContain('Proposed: Bench of body-a: 0.3 stops under at ISO 400.\n');
    await lamella(folder, ['bring-back', 'day.txt', NAME, '--propose', '--write']);
    const again = await lamella(folder, ['bring-back', 'day.txt', NAME, '--propose']);
    expect(again).toEqual({ status: 0, out: '', err: 'Nothing to bring back.\n' });
  });

  it('ends with 1 where something was left', async () => {
    const other = dayText({ plan: NAME, saved: AT, takes: [{ ...TAKE, shot: 'gone' }] });
    const folder = folderWith({ [NAME]: PLAN, 'day.txt': other });
    const { status, err } = await lamella(folder, ['bring-back', 'day.txt', NAME, '--write']);
    expect(err).toBe('Take 1 of gone: the plan has no such shot.\nNothing to bring back.\n');
    expect(status).toBe(1);
  });

  it('refuses what it can not read', async () => {
    const folder = folderWith({
      [NAME]: PLAN,
      'bad.txt': 'lamella day 1\n{',
      'huge.txt': ' '.repeat(3_000_001),
      'latin.txt': new Uint8Array([0xff]),
    });
    for (const [file, why] of [
      ['bad.txt', 'what follows its first line is not JSON, or it is cut off'],
      ['huge.txt', 'it is too large'],
      ['latin.txt', 'it is not UTF-8'],
      ['none.txt', 'no such file'],
      ['.', 'not a file'],
    ] as const) {
      const ran = await lamella(folder, ['bring-back', file, NAME]);
      expect(ran).toEqual({ status: 2, out: '', err: `lamella: ${file}: ${why}\n` });
    }
  });
});
