/** `lamella timeline`: what it writes, where, and what it says where it can't. */
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import { readClip } from '../../server/media/read-clip.ts';
import { createCore } from '../../shared/core/core.ts';
import { withEdit } from '../support/edits.ts';
import { makeClip } from '../support/ffmpeg.ts';
import { folderWith } from './support.ts';

const CUTS = ['one: { shot: skin, duration: 1 bar }', 'two: { shot: frost, duration: 2 bars }'];

const run = (files: Readonly<Record<string, string>>, ...args: readonly string[]) =>
  runIn(folderWith(files), ...args);

async function runIn(cwd: string, ...args: readonly string[]) {
  let [out, err] = ['', ''];
  const status = await runCommandLine(args, {
    createCore,
    rules: [],
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => ({
      read: async (file) => readClip(file),
      close: async () => undefined,
    }),
    terminal: {
      cwd,
      colour: false,
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      progress: () => undefined,
      onInterrupt: () => () => undefined,
      input: async () => new Uint8Array(),
    },
  });
  return { status, out, err, file: (name: string) => readFileSync(path.join(cwd, name), 'utf8') };
}

it('writes OpenTimelineIO to standard output', async () => {
  const { status, out, err } = await run(
    { 'a.shootplan.yaml': withEdit(CUTS) },
    'timeline',
    'a.shootplan.yaml',
  );
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(JSON.parse(out)).toMatchObject({ OTIO_SCHEMA: 'Timeline.1' });
});

it('writes to a file, a shot list where its name says so', async () => {
  const files = { 'a.shootplan.yaml': withEdit(CUTS) };
  const cut = await run(files, 'timeline', 'a.shootplan.yaml', '-o', 'cut.otio');
  const said = 'The timeline was written to cut.otio.\n';
  expect(cut).toMatchObject({ status: 0, out: '', err: said });
  expect(JSON.parse(cut.file('cut.otio')).tracks.children[0].children).toHaveLength(2);
  const list = await run(files, 'timeline', 'a.shootplan.yaml', '-o', 'cut.csv');
  expect(list.err).toBe('The shot list was written to cut.csv.\n');
  expect(list.file('cut.csv').split('\r\n')).toHaveLength(4);
});

it.each([
  ['an edit is not there', withEdit([]), 'a.shootplan.yaml: the plan has no edit with cuts'],
  ['a length is missing', withEdit(['one: { shot: skin }']), 'needs `duration` of one'],
])('says that %s', async (_, text, said) => {
  const { status, out, err } = await run(
    { 'a.shootplan.yaml': text },
    'timeline',
    'a.shootplan.yaml',
  );
  expect({ status, out }).toEqual({ status: 2, out: '' });
  expect(err).toContain(said);
});

it('never takes a plan’s place', async () => {
  const files = { 'a.shootplan.yaml': withEdit(CUTS) };
  const { status, file } = await run(
    files,
    'timeline',
    'a.shootplan.yaml',
    '-o',
    'a.shootplan.yaml',
  );
  expect(status).toBe(2);
  expect(file('a.shootplan.yaml')).toBe(withEdit(CUTS));
});

it('writes the format that the file name says', async () => {
  const files = { 'a.shootplan.yaml': withEdit(CUTS) };
  const xml = await run(files, 'timeline', 'a.shootplan.yaml', '-o', 'cut.FCPXML');
  expect(xml.file('cut.FCPXML')).toContain('<fcpxml version="1.11">');
  expect(xml.err).toContain('skin, take 1 has no file yet. A gap keeps its place.\n');
  const list = await run(files, 'timeline', 'a.shootplan.yaml', '-o', 'cut.edl');
  expect(list.file('cut.edl').split('\r\n').slice(0, 5)).toEqual([
    'TITLE: Winter Window',
    'FCM: NON-DROP FRAME',
    '* NOTE: The music and its beats are left out.',
    '',
    '001  AX       V     C        00:00:00:00 00:00:02:17 00:00:00:00 00:00:02:17',
  ]);
  expect(list.err).toContain('The music and its beats are left out.\n');
});

it('reads the clips that are there, and refers to them from the output file', async () => {
  const text = `${withEdit(CUTS)}
clips:
  skin: [{ file: media/a.mov, verdict: keep }]
  frost: [{ file: media/none.mov, verdict: keep }]
`;
  const cwd = folderWith({ 'plans/a.shootplan.yaml': text, 'edits/empty': '' });
  mkdirSync(path.join(cwd, 'plans/media'));
  makeClip(path.join(cwd, 'plans/media/a.mov'), {
    rate: '50',
    seconds: 3,
    coding: ['-timecode', '01:00:00:00', '-c:v', 'mpeg4'],
  });
  const plan = 'plans/a.shootplan.yaml';
  const cut = await runIn(
    cwd,
    'timeline',
    plan,
    '-o',
    'edits/cut.otio',
    '--start-timecode',
    '10:00:00:00',
  );
  expect(cut.err).toBe('The timeline was written to edits/cut.otio.\n');
  const { tracks, global_start_time: start } = JSON.parse(cut.file('edits/cut.otio'));
  expect(start.value).toBe(900_000);
  const [one, two] = tracks.children[0].children;
  expect(one.media_references.DEFAULT_MEDIA).toMatchObject({
    target_url: '../plans/media/a.mov',
    available_range: { duration: { value: 150, rate: 50 } },
  });
  expect(two.media_references.DEFAULT_MEDIA).toMatchObject({
    target_url: '../plans/media/none.mov',
    available_range: null,
  });
  const there = await runIn(cwd, 'timeline', plan, '--media', 'D:\\shoot');
  expect(there.out).toContain('"target_url": "file:///D:/shoot/media/a.mov"');
});

it.each([
  [
    ['--start-timecode', '25:00:00:00'],
    'a.shootplan.yaml: 25:00:00:00 is not a timecode at 25 fps',
  ],
  [['--bom'], '--bom goes with --format csv.'],
])('refuses %j', async (more, said) => {
  const files = { 'a.shootplan.yaml': withEdit(CUTS) };
  const { status, err } = await run(files, 'timeline', 'a.shootplan.yaml', ...more);
  expect(status).toBe(2);
  expect(err).toContain(said);
});

it('begins a shot list with a byte order mark where asked', async () => {
  const files = { 'a.shootplan.yaml': withEdit(CUTS) };
  const { out } = await run(files, 'timeline', 'a.shootplan.yaml', '--format', 'csv', '--bom');
  expect(out.startsWith('\ufeffnumber,')).toBe(true);
});
