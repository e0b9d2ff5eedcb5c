/** `lamella timeline`: what it writes, where, and what it says where it can't. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import { createCore } from '../../shared/core/core.ts';
import { withEdit } from '../support/edits.ts';
import { folderWith } from './support.ts';

const CUTS = ['one: { shot: skin, duration: 1 bar }', 'two: { shot: frost, duration: 2 bars }'];

async function run(files: Readonly<Record<string, string>>, ...args: readonly string[]) {
  const cwd = folderWith(files);
  let [out, err] = ['', ''];
  const status = await runCommandLine(args, {
    createCore,
    rules: [],
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => {
      throw new Error('no clip is read for a timeline');
    },
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
