/** `lamella clips --look`: what is told, where ffmpeg is missing, and that it can be stopped. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { findFfmpeg } from '../../server/looking/find-ffmpeg.ts';
import { lookAtClip } from '../../server/looking/look-at-clip.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { lamellaIn } from '../support/command-line.ts';
import { clipFolder, run } from '../support/ffmpeg.ts';
import { changed } from '../support/plans.ts';

const { folder, remove } = clipFolder();
afterAll(remove);

const at = (name: string): string => path.join(folder, name);
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];
const make = (name: string, source: string): void => {
  run('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', source, ...H264, `file:${at(name)}`]);
};

const MOVING = 'testsrc2=size=320x180:rate=25:duration=2,eq=contrast=0.7';
writeFileSync(
  at('a.shootplan.yaml'),
  `${EXAMPLE_PLAN}\nclips:\n  frost:\n    - { file: stuck.mp4 }\n    - { file: dark.mp4 }\n`,
);
make('stuck.mp4', `${MOVING},select='not(between(n,20,24))',fps=25`);
make('dark.mp4', `${MOVING},lutyuv=y='16+(val-16)*0.5'`);

/** Without any program on the path. */
async function withPath<T>(value: string, use: () => Promise<T>): Promise<T> {
  const { PATH } = process.env;
  process.env.PATH = value;
  try {
    return await use();
  } finally {
    process.env.PATH = PATH;
  }
}

interface Report {
  readonly looking: string;
  readonly files: readonly { readonly findings: readonly { rule: string; message: string }[] }[];
  readonly clips: readonly { readonly looked: { readonly frames: number } | null }[];
}

const looks = /^clip-(?!differs)/;

describe('lamella clips --look', () => {
  it('tells what it saw, and where', async () => {
    const { out } = await lamellaIn(folder, [
      'clips',
      'a.shootplan.yaml',
      '--look',
      '--format',
      'json',
    ]);
    const { looking, files, clips }: Report = JSON.parse(out);
    expect(looking).toBe('done');
    expect(clips.map(({ looked }) => looked?.frames)).toEqual([50, 50]);
    const told = files[0]!.findings.filter(({ rule }) => looks.test(rule));
    expect(told.map(({ rule }) => rule)).toContain('clip-repeats');
    expect(told.map(({ rule }) => rule)).toContain('clip-drifts');
    expect(told.find(({ rule }) => rule === 'clip-repeats')?.message).toContain(
      'stuck.mp4: 5 frames repeat the one before.',
    );
  });

  it('looks at nothing unless it is asked to', async () => {
    const { out } = await lamellaIn(folder, ['clips', 'a.shootplan.yaml', '--format', 'json']);
    const { looking, clips }: Report = JSON.parse(out);
    expect([looking, ...clips.map(({ looked }) => looked)]).toEqual(['not-asked', null, null]);
  });

  it('says that ffmpeg is missing, and reads the headers all the same', async () => {
    const { out, err } = await withPath('', () =>
      lamellaIn(folder, ['clips', 'a.shootplan.yaml', '--look', '--format', 'json']),
    );
    expect(err).toContain('ffmpeg is not on the path, so no pictures are looked at.');
    expect(JSON.parse(out)).toMatchObject({
      looking: 'no-ffmpeg',
      clips: [
        { state: 'read', looked: null },
        { state: 'read', looked: null },
      ],
    });
  });

  it('proposes a row for the body’s bench, from a grey card', async () => {
    // Half of the light of 18% grey, by ITU-R BT.709: 1.099·0.09^0.45 − 0.099 = 0.273, code 76.
    make('card.mp4', 'color=size=320x180:rate=25:duration=1,lutyuv=y=76:u=128:v=128');
    const args = ['--test-clip', 'card.mp4', '--shot', 'frost', '--look', '--format', 'json'];
    const { out } = await lamellaIn(folder, ['clips', ...args, 'a.shootplan.yaml']);
    const { benchRow, lampRow, offsetOf } = JSON.parse(out);
    // The panel was read with a meter: what is off can only be the body.
    expect({ lampRow, offsetOf }).toEqual({ lampRow: null, offsetOf: 'body' });
    const figures = await lamellaIn(folder, ['figures', 'a.shootplan.yaml', '--format', 'json']);
    const planned: number = JSON.parse(figures.out).shots.frost.exposureErrorStops;
    expect(benchRow).toMatchObject({ body: 'body-a', set: 1250 });
    expect(Math.abs(benchRow.foundStops - (-1 - planned))).toBeLessThan(0.1);
    expect(benchRow.text).toMatch(/^\{ set: 1250, found: [0-9.]+ stops? (?:over|under) \}$/);
  });
});

describe('the offset of a grey card', () => {
  const SHEET = {
    'lights/panel/reading': null,
    'lights/panel/illuminance': '300 lx',
    'lights/panel/illuminance-distance': '1 m',
  };
  const MEASURED = { 'kit/bodies/body-a/bench': '[{ set: 400, found: 0.1 stops over }]' };

  const reported = async (change: Readonly<Record<string, string | null>>, json = true) => {
    writeFileSync(at('b.shootplan.yaml'), changed(EXAMPLE_PLAN, change));
    const args = ['--test-clip', 'card.mp4', '--shot', 'frost', '--look'];
    const format = json ? ['--format', 'json'] : [];
    return (await lamellaIn(folder, ['clips', ...args, ...format, 'b.shootplan.yaml'])).out;
  };
  const error = async (): Promise<number> => {
    const { out } = await lamellaIn(folder, ['figures', 'b.shootplan.yaml', '--format', 'json']);
    return JSON.parse(out).shots.frost.exposureErrorStops;
  };

  it('is the lamp’s where the body was measured, and its row makes up for it', async () => {
    make('card.mp4', 'color=size=320x180:rate=25:duration=1,lutyuv=y=76:u=128:v=128');
    const { benchRow, lampRow, offsetOf } = JSON.parse(await reported({ ...SHEET, ...MEASURED }));
    expect({ benchRow, offsetOf }).toEqual({ benchRow: null, offsetOf: 'lamp' });
    // The card shows half of its light, so −1 stop; each stop is a factor of 2 (ISO 2720).
    const planned = await error();
    expect(Math.log2(lampRow.lux / 300)).toBeCloseTo(-1 - planned, 1);
    expect(lampRow).toMatchObject({ light: 'panel', distanceMm: 1000 });
    expect(lampRow.text).toBe(`{ distance: 1000 mm, illuminance: ${lampRow.lux} lx }`);
    const out = await reported({ ...SHEET, ...MEASURED }, false);
    expect(out).toContain('add this to `bench` of panel:');
    expect(out).toContain('The body was measured, so it is the offset of the lamp.');
    // A data sheet and one reading of it: most of the way to the reading.
    writeFileSync(
      at('b.shootplan.yaml'),
      changed(EXAMPLE_PLAN, { ...SHEET, ...MEASURED, 'lights/panel/bench': `[${lampRow.text}]` }),
    );
    expect(Math.abs((await error()) + 1)).toBeLessThan(0.2 * Math.abs(planned + 1));
  });

  it.each([
    ['nothing was measured', SHEET],
    [
      'the lamp is dimmed',
      { ...SHEET, ...MEASURED, 'shots/frost/relight': '{ panel: { dimmed: 40 % } }' },
    ],
    ['two lamps shine', { ...SHEET, ...MEASURED, 'shots/frost/light': '[panel, bulb]' }],
  ])('is of body and lamps together where %s', async (_, change) => {
    const { benchRow, lampRow, offsetOf } = JSON.parse(await reported(change));
    expect({ lampRow, offsetOf }).toEqual({ lampRow: null, offsetOf: 'together' });
    expect(benchRow).toMatchObject({ body: 'body-a' });
  });
});

describe('ffmpeg', () => {
  it('is looked for in absolute folders alone', async () => {
    mkdirSync(at('bin'));
    writeFileSync(at('bin/ffmpeg'), '#!/bin/sh\n', { mode: 0o755 });
    expect(await findFfmpeg({ PATH: ['.', 'bin', ''].join(path.delimiter) })).toBeNull();
    expect(await findFfmpeg({ PATH: at('bin') })).toBe(at('bin/ffmpeg'));
    expect(await findFfmpeg({})).toBeNull();
  });

  const request = async (name: string, signal: AbortSignal, program?: string) =>
    lookAtClip({
      program: program ?? (await findFfmpeg(process.env))!,
      file: at(name),
      size: { width: 320, height: 180 },
      ask: {
        ...{ lampsHz: [], exposedFps: null, effectiveFNumber: null, pixelUm: null },
        ...{ exposureErrorStops: null, iso: null, body: null },
      },
      signal,
      progress: () => undefined,
    });

  it.each(['-i http-x.mp4', 'concat:a|b.mp4', "quote's %d [x].mp4"])(
    'takes no name for an option, a pattern or an address: %s',
    async (name) => {
      make(name, 'testsrc2=size=320x180:rate=25:duration=0.2');
      const answer = await request(name, new AbortController().signal);
      expect(answer).toMatchObject({ state: 'seen', looked: { frames: 5 } });
    },
  );

  it('follows no list to other files or addresses', async () => {
    writeFileSync(at('list.mp4'), '#EXTM3U\n#EXTINF:1,\nstuck.mp4\n#EXT-X-ENDLIST\n');
    expect(await request('list.mp4', new AbortController().signal)).toMatchObject({
      state: 'failed',
    });
  });

  it('that does not start, or breaks down, is a failure of one clip', async () => {
    const { signal } = new AbortController();
    writeFileSync(at('broken'), '#!/bin/sh\necho it broke >&2\nexit 3\n', { mode: 0o755 });
    expect(await request('stuck.mp4', signal, at('broken'))).toEqual({
      state: 'failed',
      why: 'it broke',
    });
    expect(await request('stuck.mp4', signal, at('none'))).toMatchObject({ state: 'failed' });
  });

  it('is ended at once when nobody wants to know any more', async () => {
    const stop = new AbortController();
    const looking = request('stuck.mp4', stop.signal);
    stop.abort();
    expect(await looking).toEqual({ state: 'stopped' });
  });
});
